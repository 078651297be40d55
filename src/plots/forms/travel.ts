import { scaleLinear } from 'd3-scale';
import { angle, length, share } from '../../units/quantity.ts';
import { toUnit } from '../../units/unit.ts';
import { cursorLine } from '../cursor.ts';
import {
  circle,
  type Drawing,
  isNarrow,
  line,
  lined,
  path,
  patterns,
  points,
  said,
  type Sheet,
  tag,
  text,
} from '../drawing.ts';

export interface TravelValues {
  /** Depth (m) against crank angle (rad), zero at firing top dead center. */
  readonly pistonTravel: { readonly x: Float64Array; readonly y: Float64Array };
  readonly intakeOpening: number;
  readonly intakeClosing: number;
  readonly effectiveStroke: number;
  readonly strokeLost: number;
}

const degree = Math.PI / 180;

/** Piston travel through intake and compression, with the span the intake valve is open and what it costs. */
export function travel(v: TravelValues, sheet: Sheet): Drawing {
  const { x: angles, y: depths } = v.pistonTravel;
  const { unit } = length[sheet.system];
  const narrow = isNarrow(sheet);
  const height = narrow ? 260 : 310;
  const deepest = Math.max(...depths);
  const x = scaleLinear([-400 * degree, 0], [36, sheet.width - 14]);
  const y = scaleLinear([0, deepest], [62, height - 46]);
  const [open, shut] = [-2 * Math.PI - v.intakeOpening, -Math.PI + v.intakeClosing];
  const ticks = scaleLinear([0, toUnit(deepest, unit)], [0, 1]).ticks(4);
  const curve: [number, number][] = [];
  // What the curve does before the first top is what it does before the second, a turn later.
  angles.forEach((a, i) => a >= -40 * degree && a < 0 && curve.push([x(a - 2 * Math.PI), y(depths[i]!)]));
  angles.forEach((a, i) => curve.push([x(a), y(depths[i]!)]));
  const lost = curve.filter((_, i) => angles[i]! >= -Math.PI && angles[i]! <= shut);
  const shutAt: [number, number] = [x(shut), y(v.effectiveStroke)];
  const floor = y(deepest);
  // The words stand in the bowl of the curve if they find room there.
  const side = shutAt[0] - x(-1.5 * Math.PI) > 90 ? 'end' : 'start';
  const beside: [number, number] = [
    shutAt[0] + (side === 'end' ? -10 : 10),
    y(deepest * (side === 'end' ? 0.4 : 0.84)),
  ];
  const bar = (from: number, to: number): string =>
    [
      line(from, 40, to, 40, 'stroke="var(--l2)" stroke-width="3"'),
      ...[from, to].map((at) => line(at, 35, at, 45, 'stroke="var(--l2)" stroke-width="3"')),
    ].join('');
  const centers: readonly [number, string][] = [
    [-2 * Math.PI, 'top'],
    [-1.5 * Math.PI, '90°'],
    [-Math.PI, 'bottom'],
    [-0.5 * Math.PI, '270°'],
    [0, 'top'],
  ];
  const body = [
    patterns(sheet.id),
    text(0, 14, `Piston below top dead center, ${unit.symbol}`),
    ...ticks.map(
      (t) =>
        line(36, y(t * unit.factor), sheet.width - 14, y(t * unit.factor), 'class="grid"') +
        text(28, y(t * unit.factor) + 4, String(t), 'end'),
    ),
    v.intakeClosing > 0
      ? path(
          `${points([[x(-Math.PI), floor], ...lost, shutAt, [shutAt[0], floor]])}Z`,
          `${lined('metal', sheet)} opacity=".75"`,
        )
      : '',
    path(points(curve), 'fill="none" stroke="var(--l1)" stroke-width="2"'),
    line(shutAt[0], 40, shutAt[0], floor, 'class="hair"') +
      circle(...shutAt, 5, 'fill="var(--hand)" stroke="var(--paper)" stroke-width="2"'),
    bar(Math.max(36, x(open)), shutAt[0]),
    tag(
      (Math.max(36, x(open)) + shutAt[0]) / 2,
      33,
      `intake open ${said(sheet, shut - open, angle)}`,
      'ink',
      'paper',
      'middle',
    ),
    text(...beside, `shuts at ${said(sheet, v.intakeClosing, angle)}`, side, 'hand'),
    text(beside[0], beside[1] + 17, `${said(sheet, v.strokeLost, share)} gone`, side),
    line(36, floor, sheet.width - 14, floor, 'class="axis"'),
    ...centers.map(
      ([a, name]) =>
        line(x(a), floor, x(a), floor + 5, 'class="axis"') + text(x(a), floor + 19, name, a === 0 ? 'end' : 'middle'),
    ),
    text(sheet.width - 14, height - 6, 'Crank angle', 'end'),
    cursorLine(sheet, x, -400 * degree, 0, 48, floor),
  ].join('');
  return {
    width: sheet.width,
    height,
    label: `Piston travel against crank angle. The intake valve is open for ${said(sheet, shut - open, angle)} and shuts ${said(sheet, v.intakeClosing, angle)} after bottom, when ${said(sheet, v.strokeLost, share)} of the stroke is gone.`,
    body,
    twin: {
      columns: ['Crank angle from firing top', `Piston below top, ${unit.symbol}`],
      rows: Array.from(angles, (a, i) => [a, depths[i]!] as const)
        .filter((_, i) => i % 15 === 0)
        .map(([a, depth]) => [said(sheet, a, angle), toUnit(depth, unit).toFixed(length[sheet.system].digits)]),
    },
  };
}
