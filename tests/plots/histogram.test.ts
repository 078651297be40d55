import { randomLcg, randomNormal } from 'd3-random';
import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../src/plots/drawing.ts';
import { decimalsOf, deserved, type Histogram } from '../../src/plots/histogram-figure.ts';
import { histogram } from '../../src/plots/histogram.ts';
import { type Element, elementsOf } from './markup.ts';

const normal = randomNormal.source(randomLcg(0.4))(7.84, 0.05);
const sorted = Array.from({ length: 10_000 }, normal).toSorted((a, b) => a - b);
const at = (xs: readonly number[], share: number): number => xs[Math.round(share * (xs.length - 1))] ?? NaN;
const of = (xs: readonly number[], more: Partial<Histogram> = {}): Histogram => ({
  axis: { title: 'Dynamic compression ratio', digits: 2, after: '' },
  sorted: xs,
  draws: xs.length,
  low: at(xs, 0.05),
  middle: at(xs, 0.5),
  high: at(xs, 0.95),
  isFew: false,
  ends: [at(xs, 0.001), at(xs, 0.999)],
  here: 7.84,
  zones: [],
  label: 'How often it comes to what.',
  ...more,
});
const zones: Histogram['zones'] = [
  { tone: 'comfortable', label: 'comfortable', from: null, to: 7.76 },
  { tone: 'borderline', label: 'borderline', from: 7.76, to: 7.95 },
  { tone: 'beyond', label: 'beyond this fuel', from: 7.95, to: null },
];
const drawn = (h: Histogram, width = 700): Drawing => histogram(h, { width, system: 'us', id: 'h' });
const figures = (text: string): number => Number(text.replace('−', '-').replace(/[°%]/, ''));
const barsOf = (drawing: Drawing): readonly Element[] =>
  elementsOf(drawing.body).filter((e) => e.name === 'rect' && e.attributes.fill === 'var(--ink-2)');
const wordsOf = (drawing: Drawing): string[] =>
  elementsOf(drawing.body)
    .filter((e) => e.name === 'text')
    .map((e) => e.text.trim());

describe('the bars of draws', () => {
  it('count every draw once, in steps that are all alike and hold what lies in them', () => {
    const { rows } = drawn(of(sorted)).twin;
    const edges = rows.map(([from, to]) => [figures(from!), figures(to!)] as const);
    const step = edges[0]![1] - edges[0]![0];
    edges.forEach(([from, to], i) => {
      expect(to - from).toBeCloseTo(step, 9);
      if (i > 0) expect(from).toBe(edges[i - 1]![1]);
      expect(Number(rows[i]![2])).toBe(sorted.filter((x) => x >= from && x < to).length);
    });
    expect(rows.reduce((sum, row) => sum + Number(row[2]), 0)).toBe(10_000);
    expect(rows.length).toBeGreaterThan(25);
    expect(rows.length).toBeLessThan(60);
  });
  it('are as high as their counts, from one line', () => {
    const drawing = drawn(of(sorted));
    const bars = barsOf(drawing);
    const counts = drawing.twin.rows.map((row) => Number(row[2])).filter((count) => count > 0);
    expect(bars).toHaveLength(counts.length);
    const unit = Number(bars[10]!.attributes.height) / counts[10]!;
    bars.forEach(({ attributes: { y, height } }, i) => {
      expect(Number(height)).toBeCloseTo(unit * counts[i]!, 0);
      expect(Number(y) + Number(height)).toBeCloseTo(
        Number(bars[0]!.attributes.y) + Number(bars[0]!.attributes.height),
        0,
      );
    });
  });
  it('are few where the draws are', () => {
    const few = sorted.filter((_, i) => i % 200 === 0); // 50
    expect(drawn(of(few)).twin.rows.length).toBeLessThan(16);
  });
  it('are not pressed together by a far stray', () => {
    const { rows } = drawn(of([...sorted.slice(0, -1), 1e6], {})).twin;
    expect(rows.length).toBeLessThan(60);
    expect(rows.filter((row) => Number(row[2]) > 0).length).toBeGreaterThan(25);
    expect(rows.reduce((sum, row) => sum + Number(row[2]), 0)).toBe(9999);
  });
  it('are told as shares of all draws, also of those without an answer', () => {
    const { rows } = drawn(of(sorted, { draws: 20_000 })).twin;
    for (const [, , count, share] of rows) expect(figures(share!)).toBeCloseTo((100 * Number(count)) / 20_000, 1);
  });
});

it('steps and ticks are written with the decimals they need', () => {
  for (const [value, decimals] of [
    [0.005, 3],
    [20, 0],
    [2.5e-7, 8],
    [0.1 + 0.2, 1],
    [0, 0],
    [-7.75, 2],
  ] as const)
    expect([value, decimalsOf(value)]).toEqual([value, decimals]);
});

describe('the marks of draws', () => {
  it('say the places, the middle and the present value', () => {
    const words = wordsOf(drawn(of(sorted, { zones })));
    const [low, middle, high] = [0.05, 0.5, 0.95].map((share) => at(sorted, share).toFixed(2));
    for (const said of [`5 % under ${low}`, `half under ${middle}`, `95 % under ${high}`, 'now 7.84'])
      expect(words).toContain(said);
  });
  it('leave out the places of a few draws, and a present value out of sight or missing', () => {
    const words = wordsOf(drawn(of(sorted, { isFew: true, here: 12 }))).join('; ');
    expect(words).not.toMatch(/under|now/);
    expect(wordsOf(drawn(of(sorted, { here: NaN }))).join('; ')).not.toContain('now');
  });
  it('name each band in sight once, on its own ground, and line all but the comfortable one', () => {
    const drawing = drawn(of(sorted, { zones }));
    for (const { label } of zones) expect(wordsOf(drawing).filter((words) => words === label)).toHaveLength(1);
    const linings = elementsOf(drawing.body).filter((e) => e.name === 'rect' && e.attributes.fill?.startsWith('url('));
    expect(linings.map((e) => e.attributes.fill)).toEqual(['url(#borderline-h)', 'url(#beyond-h)']);
    const [near, over] = linings.map(({ attributes: { x, width } }) => [Number(x), Number(x) + Number(width)] as const);
    expect(near![1]).toBeCloseTo(over![0], 0);
    const out = drawn(
      of(sorted, { zones: zones.map((z) => ({ ...z, from: z.from && z.from + 5, to: z.to && z.to + 5 })) }),
    );
    expect(wordsOf(out)).not.toContain('beyond this fuel');
  });
  it('have more digits than the figure deserves only where its places would be the same', () => {
    const axis = { title: '', digits: 2, after: '°' };
    expect(deserved({ axis, low: 7.7, high: 7.9 })(7.84321)).toBe('7.84°');
    expect(deserved({ axis, low: 7.841, high: 7.845 })(7.84321)).toBe('7.8432°');
    expect(deserved({ axis, low: 7, high: 7 })(-7)).toBe('−7.00°');
  });
});

describe('a drawing of draws', () => {
  const cases: readonly (readonly [string, Histogram])[] = [
    ['usual', of(sorted)],
    ['with bands', of(sorted, { zones })],
    ['of one draw', of([7.84])],
    [
      'of draws that are all the same',
      of(
        Array.from({ length: 100 }, () => 7.84),
        { zones },
      ),
    ],
    ['without an answer', of([], { draws: 100, here: NaN, zones })],
    [
      'of tiny figures',
      of(
        sorted.map((x) => (x - 7.84) * 1e-9),
        { here: 0 },
      ),
    ],
    [
      'of huge figures',
      of(
        sorted.map((x) => x * 1e12),
        { here: 7.84e12 },
      ),
    ],
    [
      'of angles below zero',
      of(
        sorted.map((x) => x - 12),
        { here: -4.16, axis: { title: 'Overlap', digits: 1, after: '°' } },
      ),
    ],
  ];
  it.each(cases)('%s has sound markup, no figure that is none, and no words off the sheet', (_, h) => {
    for (const width of [700, 358]) {
      const drawing = drawn(h, width);
      expect(drawing.body).not.toMatch(/NaN|Infinity|undefined|null|\[object/);
      expect(drawing.twin.rows.flat().join()).not.toMatch(/NaN|undefined/);
      for (const { name, attributes, text } of elementsOf(drawing.body)) {
        if (name === 'rect' && !attributes.width?.endsWith('%'))
          expect(Math.min(Number(attributes.width), Number(attributes.height))).toBeGreaterThanOrEqual(0);
        if (name !== 'text') continue;
        const [x, wide] = [Number(attributes.x), text.trim().length * 5.6];
        const anchor = attributes['text-anchor'];
        const from = anchor === 'end' ? x - wide : anchor === 'middle' ? x - wide / 2 : x;
        expect(`${text}: ${from < -6}, ${from + wide > width + 6}`).toBe(`${text}: false, false`);
      }
    }
  });
  it('keeps the words over its bars apart, wide or narrow', () => {
    for (const width of [700, 358]) {
      const over = elementsOf(drawn(of(sorted, { ends: [7, 8.7] }), width).body).filter((e) => /% under/.test(e.text));
      const [a, b] = over.map((e) => Number(e.attributes.x)).toSorted((p, q) => p - q);
      expect(b! - a!).toBeGreaterThan('95 % under 7.92'.length * 7.2);
    }
  });
});
