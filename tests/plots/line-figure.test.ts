import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { extent, type LineFigure, spacedOut, twinOf, withRoom } from '../../src/plots/line-figure.ts';

describe('labels moved apart', () => {
  const cases = fc.record({
    places: fc.array(fc.double({ min: 0, max: 400, noNaN: true }), { maxLength: 12 }),
    gap: fc.double({ min: 1, max: 20, noNaN: true }),
  });

  it('stand at least the gap from one another, none beyond the last place, in the order they had', () => {
    fc.assert(
      fc.property(cases, ({ places, gap }) => {
        const out = spacedOut(places, gap, 400);
        expect(out.length).toBe(places.length);
        const sorted = out.toSorted((a, b) => a - b);
        for (let i = 1; i < sorted.length; i++) expect(sorted[i]! - sorted[i - 1]!).toBeGreaterThan(gap - 1e-9);
        for (const place of out) expect(place).toBeLessThanOrEqual(400);
        for (const [i, a] of places.entries())
          for (const [k, b] of places.entries()) if (a < b) expect(out[i]!).toBeLessThan(out[k]!);
      }),
    );
  });
  it('stay where they are where they have room', () => {
    expect(spacedOut([90, 10, 50], 16, 100)).toEqual([90, 10, 50]);
  });
  it('give way downward, and up again at the end of the axis', () => {
    expect(spacedOut([10, 12, 14], 16, 100)).toEqual([10, 26, 42]);
    expect(spacedOut([98, 99, 100], 16, 100)).toEqual([68, 84, 100]);
  });
  it('may be none at all', () => expect(spacedOut([], 16, 100)).toEqual([]));
  it('leave what they were given as it was', () => {
    const places = [30, 20];
    spacedOut(places, 16, 100);
    expect(places).toEqual([30, 20]);
  });
});

describe('the extent of rows', () => {
  it('goes over all of them and past what is not a number', () => {
    expect(extent([[1, Number.NaN, -3], Float64Array.of(2, 7)])).toEqual([-3, 7]);
  });
  it('is nothing where there is no number', () => {
    expect(extent([])).toBeNull();
    expect(extent([[], [Number.NaN]])).toBeNull();
  });
});

describe('a range with room', () => {
  it.each([
    [0, 100],
    [-3, -3],
    [0, 0],
    [1e-9, 1e-9],
    [5, 5.0001],
  ] as const)('holds %s to %s with something to spare on both sides', (low, high) => {
    const [a, b] = withRoom([low, high]);
    expect(a).toBeLessThan(low);
    expect(b).toBeGreaterThan(high);
    expect(b - a).toBeLessThan((high - low) * 1.2 + Math.max(2.1, Math.abs(high) * 0.11));
  });
});

const text = (v: number): string => v.toFixed(1);
const figure = (xs: readonly number[], rows: Readonly<Record<string, readonly number[]>>): LineFigure => ({
  label: '',
  x: { title: 'Closing', domain: [0, 1], text },
  y: { title: 'Ratio', domain: [0, 1], text },
  lines: Object.entries(rows).map(([name, ys]) => ({ name, xs, ys, present: false })),
  bands: [],
  rules: [],
  mark: null,
});
const steps = (n: number): number[] => Array.from({ length: n }, (_, i) => i);

describe('the table twin of lines', () => {
  it('has a column a line, named as the lines are', () => {
    expect(twinOf(figure([1, 2], { A: [3, 4], B: [5, 6] }))).toEqual({
      columns: ['Closing', 'A', 'B'],
      rows: [
        ['1.0', '3.0', '5.0'],
        ['2.0', '4.0', '6.0'],
      ],
    });
  });
  it('calls a single line by what is shown', () => {
    expect(twinOf(figure([1], { '': [3] })).columns).toEqual(['Closing', 'Ratio']);
  });
  it('shows all the digits that a figure deserves, where the axis leaves some out', () => {
    const of = figure([1], { A: [3] });
    const exact = (v: number): string => v.toFixed(3);
    expect(twinOf({ ...of, y: { ...of.y, exact } }).rows).toEqual([['1.0', '3.000']]);
    expect(twinOf({ ...of, x: { ...of.x, exact } }).rows).toEqual([['1.000', '3.0']]);
  });
  it('shows a dash where there is no answer', () => {
    expect(twinOf(figure([1, 2], { A: [Number.NaN, 4] })).rows).toEqual([
      ['1.0', '–'],
      ['2.0', '4.0'],
    ]);
  });
  it.each([1, 2, 20, 21, 22, 30, 31, 41, 161, 1000])('of %s points has some twenty rows, both ends among them', (n) => {
    const { rows } = twinOf(figure(steps(n), { A: steps(n) }));
    expect(rows.length).toBeLessThanOrEqual(32);
    expect(rows.length).toBeGreaterThanOrEqual(Math.min(n, 14));
    expect(rows[0]![0]).toBe('0.0');
    expect(rows.at(-1)![0]).toBe(text(n - 1));
  });
  it('of nothing is empty', () => expect(twinOf(figure([], {}))).toEqual({ columns: ['Closing'], rows: [] }));
});
