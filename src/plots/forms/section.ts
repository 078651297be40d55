import { angle, chamberVolume, gap, gaugePressure, length, share } from '../../units/quantity.ts';
import { valueAt } from '../cursor.ts';
import { box, type Drawing, isNarrow, line, lined, path, patterns, points, said, type Sheet, text } from '../drawing.ts';
import { pistonDrop } from '../piston.ts';
import { angleAt, drawn, type Gear, ink, laidOut } from './gear.ts';

interface Curve {
  readonly x: Float64Array;
  readonly y: Float64Array;
}
export interface SectionValues extends Gear {
  readonly intakeLift: Curve;
  readonly exhaustLift: Curve;
  readonly intakeValveDiameter: number;
  readonly exhaustValveDiameter: number;
  readonly intakeSeatDepth: number;
  readonly exhaustSeatDepth: number;
  readonly intakeClosing: number;
  readonly clearanceVolume: number;
  readonly sweptVolume: number;
  /** While the starter turns it; may still be coming. */
  readonly motoredPressure?: Curve;
}

const cycle = 4 * Math.PI;
const closed = 1e-6; // m

/** What happens at a crank angle, in words: for the picture's caption and for who does not see it. */
export function atAngle(v: SectionValues, crank: number, sheet: Sheet): string {
  const drop = pistonDrop(v.linkage, crank);
  const [intake, exhaust] = [valueAt(v.intakeLift, crank), valueAt(v.exhaustLift, crank)];
  const open = [intake > closed ? `intake open ${said(sheet, intake, gap)}` : '', exhaust > closed ? `exhaust open ${said(sheet, exhaust, gap)}` : ''].filter((w) => w !== '');
  const volume = v.clearanceVolume + (v.sweptVolume * drop) / v.linkage.travel;
  const [low, whole] = [said(sheet, volume, chamberVolume), said(sheet, v.clearanceVolume + v.sweptVolume, chamberVolume)];
  const strokes = ['Power', 'Exhaust', 'Intake', 'Compression'];
  const stroke = strokes[Math.min(3, Math.floor((((crank % cycle) + cycle) % cycle) / Math.PI))]!;
  const shut = 3 * Math.PI + v.intakeClosing;
  const gone = 1 - drop / v.linkage.travel;
  const compressing =
    crank >= 3 * Math.PI && crank < shut
      ? ` ${said(sheet, gone, share)} of the stroke is gone and nothing is compressed yet.`
      : crank >= shut
        ? ` Both valves are shut; ${said(sheet, drop, length)} of the stroke is left.${pressureAt(v, crank, sheet)}`
        : '';
  return `${stroke} stroke, ${open.length > 0 ? open.join(', ') : 'valves shut'}. ${low} above the piston, of ${whole} at the bottom.${compressing}`;
}
function pressureAt(v: SectionValues, crank: number, sheet: Sheet): string {
  if (!v.motoredPressure) return '';
  return ` Turned by the starter: ${said(sheet, valueAt(v.motoredPressure, crank - cycle), gaugePressure)}.`;
}

/** Piston, rod and both valves to scale at the cursor's crank angle; the crankpin turns it. */
export function section(v: SectionValues, sheet: Sheet): Drawing {
  const crank = sheet.cursor ?? 3 * Math.PI + v.intakeClosing;
  const narrow = isNarrow(sheet);
  const top = 34;
  const head = 0.42 * v.bore;
  const at = laidOut(v, crank, head, sheet.width, top);
  const { x, y, r, deck, crown, wall, k, high, low } = at;
  const recess = Math.max(v.intakeSeatDepth, v.exhaustSeatDepth, 0) + 0.02 * v.bore;
  const half = v.bore / 2;
  const port = (across: number, diameter: number, depth: number, lift: number, name: string): string => {
    const [face, radius] = [deck + depth, diameter / 2];
    const seat = face + 0.02 * v.bore;
    const stem = 0.03 * v.bore;
    const front = face - lift;
    const shape: [number, number][] = [
      [x(front), y(across - radius)],
      [x(front), y(across + radius)],
      [x(front + 0.025 * v.bore), y(across + radius)],
      [x(front + 0.09 * v.bore), y(across + stem)],
      [x(front + head), y(across + stem)],
      [x(front + head), y(across - stem)],
      [x(front + 0.09 * v.bore), y(across - stem)],
      [x(front + 0.025 * v.bore), y(across - radius)],
    ];
    return (
      box(x(seat), y(across - radius * 0.82), (head - (seat - deck)) * k, radius * 1.64 * k, 'fill="var(--paper)" stroke="var(--edge)"') +
      path(`${points(shape)}Z`, 'fill="var(--ink)"') +
      text(x(deck + head) - 6, y(across - radius * 0.82) - 5, lift > closed ? `${name} ${said(sheet, lift, gap)}` : name, 'end')
    );
  };
  const [intake, exhaust] = [valueAt(v.intakeLift, crank), valueAt(v.exhaustLift, crank)];
  const gas = crank >= 3 * Math.PI + v.intakeClosing || intake > closed ? 'charge' : 'panel';
  const room = v.intakeValveDiameter + v.exhaustValveDiameter;
  const spread = Math.max(0.02 * v.bore, (v.bore - room) / 3);
  const body = [
    patterns(sheet.id),
    box(x(crown), y(-half), (deck + recess - crown) * k, v.bore * k, `fill="var(--${gas})"`),
    box(x(deck), y(-half) - wall, head * k, v.bore * k + 2 * wall, lined('metal', sheet)),
    box(x(deck), y(-half) + 2, recess * k, v.bore * k - 4, `fill="var(--${gas})"`),
    port(-half + spread + v.intakeValveDiameter / 2, v.intakeValveDiameter, v.intakeSeatDepth, intake, 'intake'),
    port(half - spread - v.exhaustValveDiameter / 2, v.exhaustValveDiameter, v.exhaustSeatDepth, exhaust, 'exhaust'),
    line(x(deck), y(-half) - wall, x(deck), y(half) + wall, ink(1)),
    drawn(v, at, sheet),
    text(2, 16, `${said(sheet, ((crank % cycle) + cycle) % cycle, angle)} after firing top`, 'start', 'strong'),
    ...[low, high].map((place) => line(x(place), y(half) + wall + 4, x(place), y(half) + wall + 16, 'stroke="var(--ink-3)"')),
    text(x(low), y(half) + wall + 30, 'bottom', 'middle') + text(x(high), y(half) + wall + 30, 'top', 'middle'),
  ].join('');
  return {
    width: sheet.width,
    height: y(r) + wall + 40,
    label: atAngle(v, crank, sheet),
    body,
    twin: {
      columns: ['Crank angle', 'What happens'],
      rows: Array.from({ length: narrow ? 13 : 25 }, (_, i, all = narrow ? 12 : 24) => (i * cycle) / all).map((a) => [said(sheet, a, angle), atAngle(v, a, sheet)]),
    },
    handle: {
      x: x(at.pin[0]),
      y: y(at.pin[1]),
      free: true,
      // The nearest of the two turns, so that the hand can go on round.
      valueAt: (hx, hy) => {
        const turn = angleAt(v, at, hx, hy);
        const near = turn + 2 * Math.PI * Math.round((crank - turn) / (2 * Math.PI));
        return ((near % cycle) + cycle) % cycle;
      },
    },
  };
}
