import { scaleLinear } from 'd3-scale';
import { engineTorque as torque, rotation } from '../../units/quantity.ts';
import { differenceToUnit } from '../../units/unit.ts';
import { valueAt } from '../cursor.ts';
import { circle, type Drawing, halo, isNarrow, line, path, said, type Sheet, text } from '../drawing.ts';
import { crossings, leftBetween, spansWhere } from '../crossings.ts';
import { fixed, kept, levels, type Span } from '../panel.ts';
import { smooth, speedAxis, toRpm } from '../speed-axis.ts';
import type { TorqueBand } from '../torque-band.ts';
import { halvedLine } from '../trusted.ts';

interface Build {
  readonly name: string;
  readonly torqueBand: TorqueBand;
}
export interface DifferenceValues {
  readonly first: Build;
  readonly second: Build;
  /** What the second makes more than the first, and how far under and over it that may be; rad/s and N m. */
  readonly differences: {
    readonly x: ArrayLike<number>;
    readonly difference: ArrayLike<number>;
    readonly below: ArrayLike<number>;
    readonly above: ArrayLike<number>;
  };
}

/** What one build makes more than another by speed, in its own band; thin where the band holds zero. */
export function difference({ first, second, differences: d }: DifferenceValues, sheet: Sheet): Drawing {
  const [left, right, top, bottom] = [44, sheet.width - 12, 34, isNarrow(sheet) ? 260 : 320];
  const { unit } = torque[sheet.system];
  const speeds = Array.from(d.x);
  const shown = (values: ArrayLike<number>): number[] => Array.from(values, (n) => differenceToUnit(n, unit));
  const [middle, below, above] = [shown(d.difference), shown(d.below), shown(d.above)];
  const low = middle.map((m, i) => m - below[i]!);
  const high = middle.map((m, i) => m + above[i]!);
  const far = Math.max(...high, ...low.map((n) => -n), 5);
  // Room in both halves for their words.
  const y = scaleLinear(
    [Math.min(...low, -0.3 * far) - 0.14 * far, Math.max(...high, 0.3 * far) + 0.14 * far],
    [bottom, top],
  );
  const { x, axis } = speedAxis(speeds, [left, right], bottom);
  const at = (values: readonly number[]): [number, number][] => values.map((n, i) => [x(speeds[i]!), y(n)]);
  const sure = spansWhere(speeds, low, high);
  const inside: Span = [left + 4, right - 4];
  const zeros = crossings(speeds, middle);
  const unsure = speeds.filter((_, i) => low[i]! < 0 && high[i]! > 0);
  const close = leftBetween(sure, [speeds[0]!, speeds.at(-1)!]).toSorted((a, b) => b[1] - b[0] - a[1] + a[0])[0];
  const swaps = zeros.map((s) => {
    const words = said(sheet, Math.round(toRpm(s) / 10) * 10 * (s / toRpm(s)), rotation);
    return (
      circle(x(s), y(0), 4.5, 'fill="var(--paper)" stroke="var(--l1)" stroke-width="2"') +
      text(kept(x(s), words, 'middle', inside), y(0) + 22, words, 'middle', 'strong', halo)
    );
  });
  // The words for the longest stretch that is too close to tell stand over its band.
  const overBand = ([from, to]: Span): number => {
    const near = speeds.filter((s) => Math.abs(x(s) - x((from + to) / 2)) < 60);
    return Math.max(...[(from + to) / 2, ...near].map((s) => valueAt({ x: speeds, y: high }, s)));
  };
  const tooClose = close
    ? text(
        kept(x((close[0] + close[1]) / 2), 'too close to tell', 'middle', inside),
        Math.max(top + 32, y(overBand(close)) - 10),
        'too close to tell',
        'middle',
        '',
        halo,
      )
    : '';
  // The words of a half stand at the end where the line is farther away.
  const side = (isUpper: boolean): 'start' | 'end' => {
    const [a, b] = isUpper ? [high[0]!, high.at(-1)!] : [-low[0]!, -low.at(-1)!];
    return a <= b ? 'start' : 'end';
  };
  const half = (words: string, isUpper: boolean): string =>
    text(
      side(isUpper) === 'start' ? left + 8 : right - 8,
      isUpper ? top + 14 : bottom - 10,
      words,
      side(isUpper),
      'strong',
      halo,
    );
  const largest = middle.reduce((a, m, i) => (Math.abs(m) > Math.abs(middle[a]!) ? i : a), 0);
  const room = (s: number, { x: xs, below: b, above: a }: TorqueBand): number =>
    (valueAt({ x: xs, y: b }, s) + valueAt({ x: xs, y: a }, s)) / 2;
  const body = [
    text(0, 14, `Difference in torque, ${unit.symbol}`),
    levels(
      y,
      y.ticks(6).filter((t) => t !== 0),
      [left, right],
    ),
    path(
      `${smooth(at(high))}${smooth(at(low).toReversed()).replace('M', 'L')}Z`,
      'fill="var(--l1)" fill-opacity=".14"',
    ),
    line(left, y(0), right, y(0), 'stroke="var(--ink-2)" stroke-width="1.5"'),
    text(left - 8, y(0) + 4, 'even', 'end'),
    halvedLine(
      smooth(at(middle)),
      sure.map(([from, to]): Span => [x(from), x(to)]),
      { ink: 'l1', width: 2.75 },
      [top, bottom],
      'sure',
      sheet,
    ),
    half(`${second.name} ahead`, true),
    half(`${first.name} ahead`, false),
    ...swaps,
    tooClose,
    axis,
  ].join('');
  const ahead = middle[largest]! >= 0 ? second.name : first.name;
  return {
    width: sheet.width,
    height: bottom + 50,
    label: `Difference in torque by engine speed, ${second.name} less ${first.name}: the largest is ${said(sheet, Math.abs(d.difference[largest]!), torque)} at ${said(sheet, speeds[largest]!, rotation)}, where ${ahead} is ahead. ${zeros.length > 0 ? `Even at ${zeros.map((s) => said(sheet, s, rotation)).join(', ')}.` : 'Never even.'} The difference is surer than either level: ${said(sheet, (d.below[largest]! + d.above[largest]!) / 2, torque)} there against ${said(sheet, room(speeds[largest]!, first.torqueBand), torque)}${unsure.length > 0 ? `; at ${unsure.length} of ${speeds.length} speeds it is too close to tell` : ''}.`,
    body,
    twin: {
      columns: ['Engine speed, rpm', first.name, second.name, `Difference, ${unit.symbol}`, 'From', 'To'],
      rows: speeds.map((s, i) => [
        `${Math.round(toRpm(s))}${low[i]! < 0 && high[i]! > 0 ? ', too close to tell' : ''}`,
        ...[first, second].map(({ torqueBand: b }) =>
          differenceToUnit(valueAt({ x: b.x, y: b.torque }, s), unit).toFixed(0),
        ),
        ...[middle, low, high].map((n) => fixed(n[i]!, 0)),
      ]),
    },
  };
}
