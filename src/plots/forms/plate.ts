import { angle, chamberVolume, length, share } from '../../units/quantity.ts';
import {
  box,
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

/** One cylinder at the moment the intake valve shuts. Lengths in m, volumes in m3, angles in rad. */
export interface PlateValues {
  readonly bore: number;
  readonly linkage: {
    readonly throw: number;
    readonly rod: number;
    readonly offset: number;
    readonly topAngle: number;
    readonly top: number;
    readonly travel: number;
  };
  readonly deckClearance: number;
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
  const r = bore / 2;
  const pin = 0.34 * bore; // compression height, for the picture
  const head = 0.32 * bore;
  const left = l.throw + 0.09 * bore;
  const deck = l.top + pin + v.deckClearance;
  const k = (sheet.width - 4) / (left + deck + head);
  const wall = 12;
  const top = narrow ? 40 : 48;
  const mid = top + wall + r * k;
  const x = (along: number): number => (left + along) * k;
  const y = (across: number): number => mid + across * k;

  // The crank turns so that the pin, after the bottom, goes down in the picture and the piston comes up to the right.
  const turned = Math.PI + v.intakeClosing + l.topAngle;
  const [px, py] = [l.throw * Math.cos(turned), -l.throw * Math.sin(turned)];
  const wrist = l.top - v.effectiveStroke;
  const crown = wrist + pin;
  const [high, low] = [l.top + pin, l.top + pin - l.travel];

  const roof = chamber(deck, r, head, x, y);
  const ink = (width: number): string => `stroke="var(--ink)" stroke-width="${width}"`;
  const bar = (x1: number, y1: number, x2: number, y2: number, width: number, fill: string): string =>
    line(x1, y1, x2, y2, `${ink(width)} stroke-linecap="round"`) +
    line(
      x1,
      y1,
      x2,
      y2,
      `stroke="var(--${fill})" stroke-width="${Math.max(1, width - 3).toFixed(1)}" stroke-linecap="round"`,
    );
  const arc = Array.from({ length: 31 }, (_, i): [number, number] => {
    const a = Math.PI + l.topAngle + (v.intakeClosing * i) / 30;
    return [x(l.throw * Math.cos(a)), y(-l.throw * Math.sin(a))];
  });
  const skirt = wrist - 0.19 * bore;
  const mouth = Math.max(0.6 * l.throw, low - 0.42 * bore);
  const below = y(r) + wall + 22;
  const middle = (crown + deck) / 2;

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
    ...[-1, 1].map(
      (side) =>
        box(x(mouth), side > 0 ? y(r) : y(-r) - wall, (deck - mouth) * k, wall, lined('metal', sheet)) +
        line(x(mouth), y(side * r), x(deck), y(side * r), ink(1.5)),
    ),
    path(roof, `fill="none" ${ink(1.5)}`),
    line(x(deck), y(-r) - wall, x(deck), y(-r * 0.93), ink(1)) +
      line(x(deck), y(r * 0.88), x(deck), y(r) + wall, ink(1)),
    valve(deck, r, x, y),
    line(x(low), y(-r), x(low), y(r), 'stroke="var(--ink-3)" stroke-dasharray="4 3"'),
    circle(x(0), mid, l.throw * k, 'fill="none" stroke="var(--edge)" stroke-dasharray="1 4"'),
    line(x(-l.throw) - 10, mid, x(deck + head), mid, 'stroke="var(--edge)" stroke-dasharray="14 3 2 3"'),
    path(points(arc), 'fill="none" stroke="var(--hand)" stroke-width="3"'),
    bar(x(0), mid, x(px), y(py), 0.152 * bore * k, 'panel'),
    bar(x(px), y(py), x(wrist), y(-l.offset), 0.103 * bore * k, 'paper'),
    path(
      `${points([
        [x(crown), y(-r) + 1.5],
        [x(crown), y(r) - 1.5],
        [x(skirt), y(r) - 1.5],
        [x(skirt), y(r * 0.55)],
        [x(wrist + 0.11 * bore), y(r * 0.55)],
        [x(wrist + 0.11 * bore), y(-r * 0.55)],
        [x(skirt), y(-r * 0.55)],
        [x(skirt), y(-r) + 1.5],
      ])}Z`,
      `fill="var(--panel)" ${ink(1.5)} stroke-linejoin="round"`,
    ),
    ...[0.074, 0.128, 0.177].map(
      (ring) =>
        line(x(crown - ring * bore), y(-r) + 1, x(crown - ring * bore), y(-r * 0.86), ink(1)) +
        line(x(crown - ring * bore), y(r * 0.86), x(crown - ring * bore), y(r) - 1, ink(1)),
    ),
    circle(x(wrist), y(-l.offset), 0.074 * bore * k, `fill="var(--paper)" ${ink(1.5)}`),
    circle(x(0), mid, 0.088 * bore * k, `fill="var(--paper)" ${ink(1.5)}`) + circle(x(0), mid, 2, 'fill="var(--ink)"'),
    text(x(middle), mid - (narrow ? 6 : 8), narrow ? '' : 'trapped', 'middle'),
    text(x(middle), mid + (narrow ? 4 : 14), said(sheet, v.trappedVolume, chamberVolume), 'middle', 'strong'),
    text(x(deck + head), top - 14, `clearance ${said(sheet, v.clearanceVolume, chamberVolume)}`, 'end'),
    line(x(deck + 0.04 * bore), top - 9, x(deck + 0.04 * bore), y(-r * 0.58), 'stroke="var(--ink-3)"') +
      circle(x(deck + 0.04 * bore), y(-r * 0.58), 2.5, 'fill="var(--ink)"'),
    text(2, top - 14, said(sheet, v.intakeClosing, angle), 'start', 'hand', `style="font-size:${narrow ? 15 : 17}px"`),
    text(narrow ? 40 : 50, top - 14, narrow ? 'after bottom' : 'after bottom dead center'),
    ...[low, crown, high].map((at) => line(x(at), y(r) + wall + 4, x(at), below + 6, 'stroke="var(--ink-3)"')),
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
      x: x(px),
      y: y(py),
      free: true,
      valueAt: (hx, hy) => {
        const at = Math.atan2(-(hy - mid), hx - x(0)) - l.topAngle;
        const after = at - Math.PI;
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
