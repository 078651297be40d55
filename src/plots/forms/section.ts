import { angle, chamberVolume, gap, gaugePressure, share } from '../../units/quantity.ts';
import { valueAt } from '../cursor.ts';
import {
  box,
  type Drawing,
  isNarrow,
  line,
  lined,
  path,
  patterns,
  points,
  said,
  type Sheet,
  text,
} from '../drawing.ts';
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

/** What happens at a crank angle, in words: under the picture, and for who does not see it. */
export function atAngle(v: SectionValues, crank: number, sheet: Sheet): string {
  const at = ((crank % cycle) + cycle) % cycle;
  const drop = pistonDrop(v.linkage, at);
  const left = (v.sweptVolume * drop) / v.linkage.travel;
  const volume = (m3: number): string => said(sheet, m3, chamberVolume);
  const gone = said(sheet, 1 - drop / v.linkage.travel, share);
  const shut = 3 * Math.PI + v.intakeClosing;
  if (Math.abs(at - shut) < 1e-6)
    return `The intake valve shuts here, as its card counts it: ${gone} of the stroke is gone. ${volume(left)} is left to be compressed, next to ${volume(v.sweptVolume)} swept; with the clearance ${volume(left + v.clearanceVolume)} is trapped.`;
  const open = [
    ['intake', valueAt(v.intakeLift, at)] as const,
    ['exhaust', valueAt(v.exhaustLift, at)] as const,
  ].flatMap(([name, lift]) => (lift > closed ? [`${name} open ${said(sheet, lift, gap)}`] : []));
  const stroke = ['Power', 'Exhaust', 'Intake', 'Compression'][Math.min(3, Math.floor(at / Math.PI))]!;
  const squeeze =
    at < 3 * Math.PI
      ? ''
      : at < shut
        ? ` ${gone} of the stroke is gone and nothing is compressed yet.`
        : pressureAt(v, at, sheet);
  return `${stroke} stroke, ${open.length > 0 ? open.join(', ') : 'both valves shut'}. ${volume(left + v.clearanceVolume)} above the piston.${squeeze}`;
}
function pressureAt(v: SectionValues, at: number, sheet: Sheet): string {
  if (!v.motoredPressure) return '';
  return ` Turned by the starter: ${said(sheet, valueAt(v.motoredPressure, at - cycle), gaugePressure)}.`;
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
  const port = (across: number, diameter: number, depth: number, lift: number): string => {
    const [face, radius] = [deck + depth, diameter / 2];
    const seat = face + 0.02 * v.bore;
    const stem = 0.03 * v.bore;
    const front = face - lift;
    const shape: [number, number][] = [
      [x(front), y(across - radius)],
      [x(front), y(across + radius)],
      [x(front + 0.025 * v.bore), y(across + radius)],
      [x(front + 0.09 * v.bore), y(across + stem)],
      [x(deck + head), y(across + stem)],
      [x(deck + head), y(across - stem)],
      [x(front + 0.09 * v.bore), y(across - stem)],
      [x(front + 0.025 * v.bore), y(across - radius)],
    ];
    return (
      box(
        x(seat),
        y(across - radius * 0.82),
        (head - (seat - deck)) * k,
        radius * 1.64 * k,
        'fill="var(--paper)" stroke="var(--edge)"',
      ) + path(`${points(shape)}Z`, 'fill="var(--ink)"')
    );
  };
  const [intake, exhaust] = [valueAt(v.intakeLift, crank), valueAt(v.exhaustLift, crank)];
  const named = (name: string, lift: number): string => `${name} ${lift > closed ? said(sheet, lift, gap) : 'shut'}`;
  const gas = crank >= 3 * Math.PI + v.intakeClosing || intake > closed ? 'charge' : 'panel';
  const room = v.intakeValveDiameter + v.exhaustValveDiameter;
  const spread = Math.max(0.02 * v.bore, (v.bore - room) / 3);
  const body = [
    patterns(sheet.id),
    box(x(crown), y(-half), (deck + recess - crown) * k, v.bore * k, `fill="var(--${gas})"`),
    box(x(deck), y(-half) - wall, head * k, v.bore * k + 2 * wall, lined('metal', sheet)),
    box(x(deck), y(-half) + 2, recess * k, v.bore * k - 4, `fill="var(--${gas})"`),
    port(-half + spread + v.intakeValveDiameter / 2, v.intakeValveDiameter, v.intakeSeatDepth, intake),
    port(half - spread - v.exhaustValveDiameter / 2, v.exhaustValveDiameter, v.exhaustSeatDepth, exhaust),
    line(x(deck), y(-half) - wall, x(deck), y(half) + wall, ink(1)),
    drawn(v, at, sheet),
    text(2, 16, `${said(sheet, ((crank % cycle) + cycle) % cycle, angle)} after firing top`, 'start', 'strong'),
    text(x(deck + head), 16, named('intake', intake), 'end'),
    text(x(deck + head), y(half) + wall + 18, named('exhaust', exhaust), 'end'),
    ...[low, high].map((place) =>
      line(x(place), y(half) + wall + 4, x(place), y(half) + wall + 16, 'stroke="var(--ink-3)"'),
    ),
    text(x(low), y(half) + wall + 37, 'bottom', 'middle') + text(x(high), y(half) + wall + 37, 'top', 'middle'),
  ].join('');
  return {
    width: sheet.width,
    height: y(r) + wall + 44,
    label: atAngle(v, crank, sheet),
    body,
    twin: {
      columns: ['Crank angle', 'What happens'],
      rows: Array.from({ length: narrow ? 13 : 25 }, (_, i, all = narrow ? 12 : 24) => (i * cycle) / all).map((a) => [
        said(sheet, a, angle),
        atAngle(v, a, sheet),
      ]),
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
