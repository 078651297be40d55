import { bin } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import type { Tone } from '../graph/kind.ts';
import { box, type Drawing, isNarrow, line, lined, patterns, type Sheet, tag, text } from './drawing.ts';
import { decimalsOf, type Histogram, written } from './histogram-figure.ts';
import { cut, hereMarked, hereSaid, letter, placesMarked, zoneWords } from './histogram-marks.ts';

const inks: Readonly<Record<Tone, readonly [ink: string, ground: string]>> = {
  comfortable: ['ink-2', 'paper'],
  borderline: ['border', 'border-fill'],
  beyond: ['beyond', 'beyond-fill'],
};
/** Bars of how often, both ends and the middle marked, the caution bands behind them. */
export function histogram(of: Histogram, sheet: Sheet): Drawing {
  const { width } = sheet;
  const steps = stepsFor(of.sorted.length);
  const whole = scaleLinear(domainOf(of), [0, 1]).nice(steps);
  const [low, high] = whole.domain() as [number, number];
  const bars = bin<number, number>()
    .domain([low, high])
    .thresholds(whole.ticks(steps))(of.sorted)
    .filter((b) => b.x1! > b.x0!);
  const most = Math.max(1, ...bars.map((b) => b.length));
  const step = bars.length > 0 ? bars[0]!.x1! - bars[0]!.x0! : 1;
  const edge = written(Math.max(of.axis.digits, decimalsOf(step)), of.axis.after);

  const [left, right, top] = [44, width - 16, 56];
  const bottom = (isNarrow(sheet) ? 300 : 340) - 48;
  const x = scaleLinear([low, high], [left, right]);
  const words = zoneWords(of.zones, x, [left, right]);
  const rows = Math.max(0, ...words.map((w) => w.row + 1));
  const y = scaleLinear([0, most], [bottom, top + 8 + rows * 18]);
  const share = scaleLinear([0, (100 * most) / Math.max(1, of.draws)], y.range());

  const lining = of.zones.map(({ tone, from, to }) => {
    const [a, b] = [from, to].map((edge, i) => cut(edge === null ? [left, right][i]! : x(edge), left, right));
    return tone === 'comfortable' || b! <= a!
      ? ''
      : box(
          a!,
          top,
          b! - a!,
          bottom - top,
          `${lined(tone, sheet)} stroke="var(--${inks[tone][0]})" stroke-opacity=".6"`,
        );
  });
  const grid = share
    .ticks(4)
    .filter((v) => v > 0)
    .map(
      (v) => line(left, share(v), right, share(v), 'class="grid"') + text(left - 8, share(v) + 4.5, `${v} %`, 'end'),
    );
  const drawn = bars.map((b) => {
    const [a, z] = [x(b.x0!), x(b.x1!)];
    return b.length === 0 ? '' : box(a + 0.5, y(b.length), z - a - 1, bottom - y(b.length), 'fill="var(--ink-2)"');
  });
  const here = of.here >= low && of.here <= high ? x(of.here) : null;
  const reach = (hereSaid(of).length * letter) / 2 + 22; // the present value stands in the place of figures near it
  const figures = x.ticks(isNarrow(sheet) ? 4 : 6);
  const tick = written(Math.max(0, ...figures.map(decimalsOf)), of.axis.after);
  const ticks = figures
    .filter((v) => here === null || Math.abs(x(v) - here) > reach)
    .map(
      (v) => line(x(v), bottom, x(v), bottom + 5, 'stroke="var(--edge)"') + text(x(v), bottom + 20, tick(v), 'middle'),
    );
  return {
    width,
    height: bottom + 48,
    label: of.label,
    body: [
      patterns(sheet.id),
      ...grid,
      ...lining,
      ...drawn,
      line(left, bottom, right, bottom, 'class="axis"'),
      ...ticks,
      ...(of.sorted.length > 0 && !of.isFew ? [placesMarked(of, x, { left, right, bottom })] : []),
      ...words.map((w) => tag(w.x, top + 16 + w.row * 18, w.label, inks[w.tone][0], inks[w.tone][1], w.anchor)),
      text(0, 14, `Share of the draws, in steps of ${written(decimalsOf(step), of.axis.after)(step)}`),
      text(right, bottom + 42, of.axis.title, 'end'),
      ...(here === null ? [] : [hereMarked(of, here, { left, right, bottom })]),
    ].join(''),
    twin: {
      columns: [`${of.axis.title}, from`, 'to', 'Draws', 'Share'],
      rows: bars.map((b) => [
        edge(b.x0!),
        edge(b.x1!),
        String(b.length),
        `${((100 * b.length) / Math.max(1, of.draws)).toFixed(1)} %`,
      ]),
    },
  };
}

/** About twice the cube root of the draws: few draws, few bars. Common practice, no source. */
const stepsFor = (draws: number): number => Math.min(44, Math.max(5, Math.round(2 * Math.cbrt(draws))));

/** The ends and a sixth of their distance on both sides. */
function domainOf({ ends: [a, b] }: Histogram): [number, number] {
  if (!Number.isFinite(a)) return [0, 1];
  const room = (b - a) / 6 || Math.abs(a) * 0.01 || 1;
  return [a - room, b + room];
}
