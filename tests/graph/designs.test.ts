import { describe, expect, it } from 'vitest';
import { type Cell, cell, drain, slow } from '../../src/graph/cell.ts';
import { beyond, designSteps, meanOf, type Reading } from '../../src/graph/designs.ts';
import { curve, type Verdict, verdict, wordAt } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';
import { snapshot, type Snapshot } from '../../src/graph/snapshot.ts';
import { Impossible } from '../../src/graph/state.ts';
import { ratio } from '../../src/units/quantity.ts';
import { toy, typed } from './toy.ts';

const at = (...cells: Cell[]): Snapshot => {
  const live = new Live(cells);
  live.look(cells);
  live.run();
  return snapshot(live);
};
const samples = (x: number[], y: number[]) => ({ x: Float64Array.from(x), y: Float64Array.from(y) });

describe('the mean of a curve', () => {
  const bent = samples([0, 1, 3, 4], [2, 4, 0, 6]);
  it('is its area over the width, straight from sample to sample', () => {
    // By hand: 3, 4 and 3 under the three pieces.
    expect(meanOf(bent, 0, 4)).toBeCloseTo(10 / 4, 12);
    expect(meanOf(bent, 4, 0)).toBeCloseTo(10 / 4, 12);
    // From the middle of the first piece to that of the second: 3 to 4 over 0.5, 4 to 2 over 1.
    expect(meanOf(bent, 0.5, 2)).toBeCloseTo((1.75 + 3) / 1.5, 12);
    expect(meanOf(bent, 1.5, 2)).toBeCloseTo(2.5, 12);
  });
  it('is none where the curve does not reach', () => {
    expect(meanOf(bent, -1, 2)).toBe(NaN);
    expect(meanOf(bent, 3, 4.1)).toBe(NaN);
    expect(meanOf(bent, 2, 2)).toBe(NaN);
    expect(meanOf(samples([1], [1]), 0, 2)).toBe(NaN);
  });
});

describe('how far a verdict is beyond a word', () => {
  const rising = verdict(ratio, [
    { id: 'low', label: 'low', tone: 'borderline' },
    { id: 'usual', label: 'usual', tone: 'comfortable' },
    { id: 'high', label: 'high', tone: 'borderline' },
    { id: 'over', label: 'over', tone: 'beyond' },
  ]);
  const edges = [2, 5, 7];
  const judged = (value: number): Verdict => ({
    word: wordAt(rising, value, edges),
    value,
    edges,
    lead: [],
    place: [],
    advice: [],
  });
  const far = (value: number, worst: string): number => beyond(rising, judged(value), worst);
  it('counts from the nearest value that would do', () => {
    expect(far(1, 'usual')).toBe(1);
    expect(far(3, 'usual')).toBe(-1);
    expect(far(5.5, 'usual')).toBe(0.5);
    expect(far(9, 'usual')).toBe(4);
    expect(far(9, 'low')).toBe(2);
  });
  it('takes words that are no worse along with it', () => {
    expect(far(1, 'high')).toBe(-6); // low, usual and high all do
    expect(far(6, 'low')).toBe(-1);
    expect(far(100, 'over')).toBe(-1); // nothing is worse
  });
  it('agrees with the word on the very edge', () => {
    expect(far(2, 'usual')).toBeLessThanOrEqual(0); // an edge belongs to the word above
    expect(far(5, 'usual')).toBeGreaterThan(0);
    expect(far(7, 'low')).toBeLessThanOrEqual(0); // the last one to the word below
  });
});

describe('designs', () => {
  const x = typed('x', 2);
  const y = typed('y', 3, { hard: [0, 10] });
  const product = cell({ ...toy('product'), from: { x, y }, compute: ({ x, y }) => x * y });
  const root = cell({
    ...toy('root'),
    from: { product },
    compute: ({ product: p }) => {
      if (p < 0) throw new Impossible(['No root.']);
      return Math.sqrt(p);
    },
  });
  const line = cell({
    ...toy('line'),
    kind: curve(ratio, ratio),
    from: { x },
    compute: ({ x }) => samples([0, 2], [x, 3 * x]),
  });
  const long = slow({
    ...toy('long'),
    from: { product },
    rough: ({ product: p }) => p + 1,
    *steps({ product: p }) {
      yield 0.5;
      return p + 1.001;
    },
  });
  const here = at(root, line, long);
  const read = (cell: Cell): Reading => ({ cell, take: { is: 'figure' } });

  it('are worked out one by one, each result as it is asked for', () => {
    const rows = drain(
      designSteps(
        here,
        [x, y],
        [
          [4, 1],
          [9, 4],
        ],
        [read(root), { cell: line, take: { is: 'mean', from: 0, to: 1 } }, read(long)],
      ),
    );
    expect(rows).toEqual([
      [2, 6, 5],
      [6, 13.5, 37],
    ]);
  });
  it('without an answer have no figure, and leave the next one alone', () => {
    const rows = drain(
      designSteps(
        here,
        [x, y],
        [
          [-1, 1],
          [1, 11],
          [1, 1],
        ],
        [read(root), read(product)],
      ),
    );
    expect(rows).toEqual([
      [NaN, -1],
      [NaN, NaN],
      [1, 1],
    ]);
  });
  it('tell what stands after each', () => {
    const steps = designSteps(here, [x], [[1], [2], [3]], [read(product)]);
    const told = Array.from({ length: 3 }, () => steps.next().value);
    expect(told).toEqual([
      { value: [[3]], done: 1 / 3 },
      { value: [[3], [6]], done: 2 / 3 },
      { value: [[3], [6], [9]], done: 1 },
    ]);
  });
});
