import { scaleLinear } from 'd3-scale';
import { angle, gap } from '../../units/quantity.ts';
import { toUnit } from '../../units/unit.ts';
import { cursorLine, valueAt } from '../cursor.ts';
import {
  box,
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

interface Curve {
  readonly x: Float64Array;
  readonly y: Float64Array;
}
interface Judged {
  readonly value: number;
  readonly edges: readonly number[];
}
export interface GapsValues {
  readonly intakeGap: Curve;
  readonly exhaustGap: Curve;
  readonly intakeClearanceVerdict: Judged;
  readonly exhaustClearanceVerdict: Judged;
  readonly intakeClearanceAngle: number;
  readonly exhaustClearanceAngle: number;
}

const degree = Math.PI / 180;

/** Both gaps around the top of the exhaust stroke, with the minimums as danger bands. */
export function gaps(v: GapsValues, sheet: Sheet): Drawing {
  const narrow = isNarrow(sheet);
  const [height, left, right] = [narrow ? 280 : 320, 44, sheet.width - 12];
  const { unit } = gap[sheet.system];
  const minimums = [v.exhaustClearanceVerdict.edges[0]!, v.intakeClearanceVerdict.edges[0]!];
  const least = Math.min(0, v.intakeClearanceVerdict.value, v.exhaustClearanceVerdict.value);
  const most = Math.max(...minimums, v.intakeClearanceVerdict.value, v.exhaustClearanceVerdict.value) * 2.2;
  const x = scaleLinear([-40 * degree, 40 * degree], [left, right]);
  const y = scaleLinear([least * 1.1, most], [height - 46, 34]);
  const trace = ({ x: xs, y: ys }: Curve): string => {
    const inside = Array.from(xs, (a, i): [number, number] => [a, ys[i]!]).filter(
      ([a, g]) => Math.abs(a) <= 40 * degree && g <= most,
    );
    return inside.length > 1
      ? path(
          points(inside.map(([a, g]): [number, number] => [x(a), y(g)])),
          'fill="none" stroke="var(--l1)" stroke-width="2"',
        )
      : '';
  };
  const side = (name: string, from: number, to: number, minimum: number): string =>
    box(
      x(from),
      y(minimum),
      x(to) - x(from),
      y(Math.min(0, least * 1.1)) - y(minimum),
      `${lined('beyond', sheet)} stroke="var(--beyond)" stroke-opacity=".6"`,
    ) +
    tag(
      from < 0 ? x(from) + 8 : x(to) - 8,
      y(0) - 8,
      `${name} least ${said(sheet, minimum, gap)}`,
      'beyond',
      'paper',
      from < 0 ? 'start' : 'end',
    );
  const place = (name: string, at: number, judged: Judged, anchor: 'start' | 'end'): string =>
    circle(x(at), y(judged.value), 4.5, 'fill="var(--ink)" stroke="var(--paper)" stroke-width="2"') +
    tag(
      x(at) + (anchor === 'start' ? 4 : -4),
      y(judged.value) + 20,
      `${name} ${said(sheet, judged.value, gap)}`,
      'ink',
      'paper',
      anchor,
    );
  const ticks = y.domain()[1]! > 0 ? scaleLinear([0, toUnit(most, unit)], [0, 1]).ticks(5) : [];
  const shifted = { ...sheet, ...(sheet.cursor === undefined ? {} : { cursor: sheet.cursor - 2 * Math.PI }) };
  const body = [
    patterns(sheet.id),
    text(0, 14, `Valve to piston, ${unit.symbol}`),
    ...ticks.map(
      (t) =>
        line(left, y(t * unit.factor), right, y(t * unit.factor), 'class="grid"') +
        text(left - 8, y(t * unit.factor) + 4, String(t), 'end'),
    ),
    side('exhaust', -40 * degree, 0, minimums[0]!),
    side('intake', 0, 40 * degree, minimums[1]!),
    trace(v.exhaustGap),
    trace(v.intakeGap),
    place('exhaust', v.exhaustClearanceAngle, v.exhaustClearanceVerdict, 'end'),
    place('intake', v.intakeClearanceAngle, v.intakeClearanceVerdict, 'start'),
    line(left, y(0), right, y(0), 'class="axis"'),
    ...[-40, -20, 0, 20, 40].map((a) =>
      text(x(a * degree), height - 26, a === 0 ? 'top' : `${Math.abs(a)}°`, 'middle'),
    ),
    text(right, height - 6, 'Before and after the top of the exhaust stroke', 'end'),
    cursorLine(shifted, x, -40 * degree, 40 * degree, 30, height - 44),
  ].join('');
  return {
    width: sheet.width,
    height,
    label: `Gap between valves and piston. Exhaust least ${said(sheet, v.exhaustClearanceVerdict.value, gap)} at ${said(sheet, v.exhaustClearanceAngle, angle)}, minimum ${said(sheet, minimums[0]!, gap)}; intake least ${said(sheet, v.intakeClearanceVerdict.value, gap)} at ${said(sheet, v.intakeClearanceAngle, angle)}, minimum ${said(sheet, minimums[1]!, gap)}.`,
    body,
    twin: {
      columns: ['After the top', `Exhaust, ${unit.symbol}`, `Intake, ${unit.symbol}`],
      rows: Array.from({ length: 17 }, (_, i) => (i - 8) * 5 * degree).map((a) => [
        said(sheet, a, angle),
        ...[v.exhaustGap, v.intakeGap].map((c) => toUnit(valueAt(c, a), unit).toFixed(3)),
      ]),
    },
  };
}
