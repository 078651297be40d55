import { scaleLinear } from 'd3-scale';
import { type Linkage, pistonDrop } from '../piston.ts';
import { angle, gap, length, liftArea } from '../../units/quantity.ts';
import { toUnit } from '../../units/unit.ts';
import { type Drawing, isNarrow, line, lined, path, patterns, points, said, type Sheet, text } from '../drawing.ts';
import { cursorLine, valueAt } from '../cursor.ts';

interface Curve {
  readonly x: Float64Array;
  readonly y: Float64Array;
}
export interface LiftsValues {
  readonly intakeLift: Curve;
  readonly exhaustLift: Curve;
  readonly linkage: Linkage;
  readonly overlap: number;
  readonly overlapArea: number;
}

const degree = Math.PI / 180;

/** Lift of both valves over the gas exchange, the piston's place under them, the overlap lined. */
export function lifts(v: LiftsValues, sheet: Sheet): Drawing {
  const narrow = isNarrow(sheet);
  const [height, left, right] = [narrow ? 300 : 360, 44, sheet.width - 12];
  const { unit } = gap[sheet.system];
  const most = Math.max(...v.intakeLift.y, ...v.exhaustLift.y, 1e-4);
  const x = scaleLinear([60 * degree, 660 * degree], [left, right]);
  const y = scaleLinear([0, most * 1.12], [height - 130, 34]);
  const floor = y(0);
  const down = scaleLinear([0, v.linkage.travel], [floor + 14, height - 46]);
  const trace = ({ x: xs, y: ys }: Curve): [number, number][] =>
    Array.from(xs, (a, i): [number, number] => [x(a), y(ys[i]!)]);
  const both = Array.from(v.intakeLift.x, (a, i): [number, number] => [
    a,
    Math.min(v.intakeLift.y[i]!, v.exhaustLift.y[i]!),
  ]).filter(([, l]) => l > 0);
  const ticks = scaleLinear([0, toUnit(most * 1.1, unit)], [0, 1]).ticks(4);
  const peak = ({ x: xs, y: ys }: Curve): number => xs[ys.indexOf(Math.max(...ys))]!;
  const centers: readonly [number, string][] = [
    [180, 'bottom'],
    [360, narrow ? 'top' : 'top, gas exchange'],
    [540, 'bottom'],
  ];
  const body = [
    patterns(sheet.id),
    text(0, 14, `Valve lift, ${unit.symbol}`),
    ...ticks.map(
      (t) =>
        line(left, y(t * unit.factor), right, y(t * unit.factor), 'class="grid"') +
        text(left - 8, y(t * unit.factor) + 4, String(t), 'end'),
    ),
    both.length > 1
      ? path(
          `${points([[x(both[0]![0]), floor], ...both.map(([a, l]): [number, number] => [x(a), y(l)]), [x(both.at(-1)![0]), floor]])}Z`,
          lined('borderline', sheet),
        )
      : '',
    path(points(trace(v.exhaustLift)), 'fill="none" stroke="var(--l3)" stroke-width="2"'),
    path(points(trace(v.intakeLift)), 'fill="none" stroke="var(--l2)" stroke-width="2"'),
    text(x(peak(v.exhaustLift)), y(Math.max(...v.exhaustLift.y)) - 8, 'exhaust', 'middle', 'strong'),
    text(x(peak(v.intakeLift)), y(Math.max(...v.intakeLift.y)) - 8, 'intake', 'middle', 'strong'),
    line(left, floor, right, floor, 'class="axis"'),
    path(
      points(
        Array.from({ length: 121 }, (_, i): [number, number] => [
          x((60 + i * 5) * degree),
          down(pistonDrop(v.linkage, (60 + i * 5) * degree)),
        ]),
      ),
      'fill="none" stroke="var(--ink-3)" stroke-width="1.5"',
    ),
    text(left - 8, height - 60, narrow ? '' : 'piston', 'end'),
    line(left, height - 44, right, height - 44, 'class="axis"'),
    ...centers.map(
      ([a, name]) =>
        line(x(a * degree), height - 44, x(a * degree), height - 39, 'class="axis"') +
        text(x(a * degree), height - 25, name, 'middle'),
    ),
    text(right, height - 6, 'Crank angle', 'end'),
    cursorLine(sheet, x, 60 * degree, 660 * degree, 30, height - 44),
  ].join('');
  return {
    width: sheet.width,
    height,
    label: `Lift of both valves over crank angle: exhaust to ${said(sheet, Math.max(...v.exhaustLift.y), gap)}, intake to ${said(sheet, Math.max(...v.intakeLift.y), gap)}; both are open for ${said(sheet, v.overlap, angle)}, an overlap area of ${said(sheet, v.overlapArea, liftArea)}.`,
    body,
    twin: {
      columns: [
        'Crank angle',
        `Exhaust, ${unit.symbol}`,
        `Intake, ${unit.symbol}`,
        `Piston below top, ${length[sheet.system].unit.symbol}`,
      ],
      rows: Array.from({ length: 31 }, (_, i) => (60 + i * 20) * degree).map((a) => [
        said(sheet, a, angle),
        ...[v.exhaustLift, v.intakeLift].map((c) => toUnit(valueAt(c, a), unit).toFixed(3)),
        toUnit(pistonDrop(v.linkage, a), length[sheet.system].unit).toFixed(2),
      ]),
    },
  };
}
