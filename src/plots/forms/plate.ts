import { angle, chamberVolume, length, share } from '../../units/quantity.ts';
import {
  circle,
  dimension,
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
import { angleAt, drawn, type Gear, ink, laidOut } from './gear.ts';

/** One cylinder at the moment the intake valve shuts. Lengths in m, volumes in m3, angles in rad. */
export interface PlateValues extends Gear {
  readonly intakeClosing: number;
  readonly effectiveStroke: number;
  readonly strokeLost: number;
  readonly trappedVolume: number;
  readonly clearanceVolume: number;
}

/**
 * The cylinder on its side, crank at the left, to scale but for the chamber; piston, crank and rod where they stand at
 * the closing. The crankpin can be taken hold of: its angle is the closing.
 */
export function plate(v: PlateValues, sheet: Sheet): Drawing {
  const { linkage: l, bore } = v;
  const narrow = isNarrow(sheet);
  const top = narrow ? 40 : 48;
  const head = 0.32 * bore;
  const at = laidOut(v, Math.PI + v.intakeClosing, head, sheet.width, top);
  const { x, y, r, deck, crown, high, low, mid, wall } = at;
  const roof = chamber(deck, r, head, x, y);
  const arc = Array.from({ length: 31 }, (_, i): [number, number] => {
    const a = Math.PI + l.topAngle + (v.intakeClosing * i) / 30;
    return [x(l.throw * Math.cos(a)), y(-l.throw * Math.sin(a))];
  });
  const below = y(r) + wall + 22;
  const middle = (crown + deck) / 2;
  const lead = deck + 0.04 * bore;

  const body = [
    patterns(sheet.id),
    path(
      `${roof}L${x(deck)} ${y(r)}L${x(crown)} ${y(r)}L${x(crown)} ${y(-r)}L${x(deck)} ${y(-r)}Z`,
      'fill="var(--charge)"',
    ),
    path(
      `${roof}L${x(deck)} ${y(r) + wall}L${x(deck + head)} ${y(r) + wall}L${x(deck + head)} ${y(-r) - wall}L${x(deck)} ${y(-r) - wall}Z`,
      lined('metal', sheet),
    ),
    path(roof, `fill="none" ${ink(1.5)}`),
    line(x(deck), y(-r) - wall, x(deck), y(-r * 0.93), ink(1)) +
      line(x(deck), y(r * 0.88), x(deck), y(r) + wall, ink(1)),
    valve(deck, r, x, y),
    line(x(-l.throw) - 10, mid, x(deck + head), mid, 'stroke="var(--edge)" stroke-dasharray="14 3 2 3"'),
    path(points(arc), 'fill="none" stroke="var(--hand)" stroke-width="3"'),
    drawn(v, at, sheet),
    text(x(middle), mid - (narrow ? 6 : 8), narrow ? '' : 'trapped', 'middle'),
    text(x(middle), mid + (narrow ? 4 : 14), said(sheet, v.trappedVolume, chamberVolume), 'middle', 'strong'),
    text(x(deck + head), top - 14, `clearance ${said(sheet, v.clearanceVolume, chamberVolume)}`, 'end'),
    line(x(lead), top - 9, x(lead), y(-r * 0.58), 'stroke="var(--ink-3)"') +
      circle(x(lead), y(-r * 0.58), 2.5, 'fill="var(--ink)"'),
    text(2, top - 14, said(sheet, v.intakeClosing, angle), 'start', 'hand', `style="font-size:${narrow ? 15 : 17}px"`),
    text(narrow ? 40 : 50, top - 14, narrow ? 'after bottom' : 'after bottom dead center'),
    ...[low, crown, high].map((place) => line(x(place), y(r) + wall + 4, x(place), below + 6, 'stroke="var(--ink-3)"')),
    dimension(x(crown), x(high), below) + dimension(x(low), x(crown), below),
    text(
      Math.min(sheet.width - 2, x(high)),
      below + 20,
      `${said(sheet, v.effectiveStroke, length)} ${narrow ? 'left' : 'of stroke left'}`,
      'end',
    ),
    text(
      x(low) - 8,
      below + 4,
      `${narrow ? 'gone' : 'gone before the valve shut:'} ${said(sheet, v.strokeLost, share)}`,
      'end',
    ),
  ].join('');

  return {
    width: sheet.width,
    height: below + 30,
    label: `Cylinder section at intake closing, ${said(sheet, v.intakeClosing, angle)} after bottom dead center: ${said(sheet, v.strokeLost, share)} of the stroke is gone, ${said(sheet, v.trappedVolume, chamberVolume)} is trapped.`,
    body,
    twin: {
      columns: ['At the closing', 'Value'],
      rows: [
        ['Intake closing, after bottom dead center', said(sheet, v.intakeClosing, angle)],
        ['Stroke left', said(sheet, v.effectiveStroke, length)],
        ['Stroke gone', said(sheet, v.strokeLost, share)],
        ['Trapped volume', said(sheet, v.trappedVolume, chamberVolume)],
        ['Clearance volume', said(sheet, v.clearanceVolume, chamberVolume)],
      ],
    },
    handle: {
      x: x(at.pin[0]),
      y: y(at.pin[1]),
      free: true,
      valueAt: (hx, hy) => {
        const after = angleAt(v, at, hx, hy) - Math.PI;
        return after < -Math.PI ? after + 2 * Math.PI : after;
      },
    },
  };
}

type Place = (along: number) => number;
/** A wedge of a chamber, for the picture: its volume is in figures, not to scale. */
function chamber(deck: number, r: number, head: number, x: Place, y: Place): string {
  const at = (along: number, across: number): string =>
    `${x(deck + along * head).toFixed(1)} ${y(across * r).toFixed(1)}`;
  return `M${at(0, -0.93)}L${at(0.08, -0.9)}L${at(0.6, 0.42)}Q${at(0.66, 0.8)} ${at(0.3, 0.86)}L${at(0, 0.88)}`;
}
/** The intake valve on its seat, along the wedge. */
function valve(deck: number, r: number, x: Place, y: Place): string {
  const [cx, cy] = [deck + 0.224 * r, -0.21 * r];
  const lean = Math.atan2(0.335, 1.32);
  const [ax, ay] = [Math.cos(lean), -Math.sin(lean)];
  const at = (along: number, across: number): [number, number] => [
    x(cx + (ax * along - ay * across) * r),
    y(cy + (ay * along + ax * across) * r),
  ];
  const shape = [
    at(-0.03, -0.38),
    at(-0.03, 0.38),
    at(0.03, 0.39),
    at(0.1, 0.05),
    at(0.41, 0.03),
    at(0.41, -0.03),
    at(0.1, -0.05),
    at(0.03, -0.39),
  ];
  return (
    path(`${points([at(0.01, -0.06), at(0.42, -0.06), at(0.42, 0.06), at(0.01, 0.06)])}Z`, 'fill="var(--paper)"') +
    path(`${points(shape)}Z`, 'fill="var(--ink)"')
  );
}
