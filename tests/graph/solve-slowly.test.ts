import { describe, expect, it } from 'vitest';
import { cell, drain, type Range, shareOf, slow, type Steps } from '../../src/graph/cell.ts';
import { Live } from '../../src/graph/live.ts';
import { NotSettled, snapshot } from '../../src/graph/snapshot.ts';
import { solveSteps } from '../../src/graph/solve-slowly.ts';
import { toy, typed } from './toy.ts';

const x = typed('x', 1);
const b = typed('b', 3);

/** A slow cell that is a known function of x, and how often it was asked. */
function of(f: (x: number) => number) {
  const asked: number[] = [];
  const y = slow({
    ...toy('y'),
    from: { x },
    *steps({ x: given }): Steps<number> {
      yield 0.5;
      asked.push(given);
      return f(given);
    },
  });
  const read = cell({ ...toy('read'), from: { y, b }, compute: ({ y, b }) => y + b });
  const live = new Live([read]);
  live.look([b]);
  live.run();
  return { read, asked, at: snapshot(live) };
}
function solved(f: (x: number) => number, target: number, range: Range) {
  const { read, asked, at } = of(f);
  const solution = drain(solveSteps(at, read, target + 3, x, range)); // b is 3
  return { ...solution, asked };
}

describe('a slow solve finds', () => {
  it('the answer of a straight line in one look more than the first five', () => {
    const { values, nearest, asked } = solved((v) => 2 * v + 1, 8, [0, 10]);
    expect(values).toEqual([expect.closeTo(3.5, 10)]);
    expect(nearest).toBeNull();
    expect(asked).toHaveLength(6);
  });

  it.each([
    ['a cube', (v: number) => v ** 3, 100, [0, 10], Math.cbrt(100)],
    ['a falling exponential', (v: number) => Math.exp(-v), 0.05, [0, 10], Math.log(20)],
    ['a rise at the end', (v: number) => Math.exp(4 * (v - 10)), 0.5, [0, 10], 10 - Math.LN2 / 4],
    ['a fall at the start', (v: number) => Math.exp(-4 * v), 0.5, [0, 10], Math.LN2 / 4],
    ['a hyperbola', (v: number) => 1 + 7e-4 / v, 9.75, [4e-5, 1e-4], 7e-4 / 8.75],
    ['a root', (v: number) => Math.sqrt(v), 2.9, [0, 10], 8.41],
  ] as const)(
    'the answer of %s to a thousandth of what it goes through, with no more than thirteen looks',
    (...row) => {
      const [, f, target, range, exact] = row;
      const { values, asked } = solved(f, target, range);
      expect(values).toHaveLength(1);
      const through = Math.abs(f(range[0]) - f(range[1]));
      expect(Math.abs(f(values[0]!) - target)).toBeLessThan(1e-3 * through);
      expect(Math.abs(values[0]! / exact - 1)).toBeLessThan(0.02);
      expect(asked.length).toBeLessThanOrEqual(13);
      expect(Math.min(...asked)).toBe(range[0]);
      expect(Math.max(...asked)).toBe(range[1]);
    },
  );

  it('both sides of a hump, also where its top lies between the places of the first look', () => {
    const hump = (v: number): number => 10 - (v - 6.2) ** 2;
    for (const target of [4, 9.7]) {
      const { values, asked } = solved(hump, target, [0, 10]);
      const off = Math.sqrt(10 - target);
      expect(values).toHaveLength(2);
      expect(Math.abs(values[0]! - (6.2 - off))).toBeLessThan(0.1);
      expect(Math.abs(values[1]! - (6.2 + off))).toBeLessThan(0.1);
      expect(asked.length).toBeLessThanOrEqual(13);
    }
  });

  it('an answer that lies on a place of the first look, at the ends too, and looks no further', () => {
    const { values, asked } = solved((v) => (v - 0) * (v - 5) * (v - 10), 0, [0, 10]);
    expect(values).toEqual([0, 5, 10]);
    expect(asked).toHaveLength(5);
  });

  it('nothing where a pole or a step leaps over the target, and says how near it comes', () => {
    const pole = solved((v) => 1 / (v - 0.123), 0, [-1, 1]);
    expect(pole.values).toEqual([]);
    const step = solved((v) => (v < 0.123 ? -1 : 2), 0, [-1, 1]);
    expect(step.values).toEqual([]);
    expect(step.nearest?.gives).toBe(-1 + 3);
  });

  it('nothing out of reach: the nearest is the end, or the top of a hump', () => {
    expect(solved((v) => v * v, 200, [0, 10])).toMatchObject({ values: [], nearest: { at: 10, gives: 103 } });
    const { values, nearest } = solved((v) => 10 - (v - 6.2) ** 2, 12, [0, 10]);
    expect(values).toEqual([]);
    expect(nearest!.at).toBeCloseTo(6.2, 6);
    expect(nearest!.gives).toBeCloseTo(13, 9);
  });

  it('what lies beside a stretch without an answer, and nothing where there is none at all', () => {
    const { values } = solved(
      (v) => {
        if (v < 1) throw new RangeError('Too low.');
        return v * v;
      },
      30,
      [-10, 10],
    );
    expect(values[0]).toBeCloseTo(Math.sqrt(30), 1);
    const none = solved(
      () => {
        throw new RangeError('Never.');
      },
      30,
      [-10, 10],
    );
    expect(none).toMatchObject({ values: [], nearest: null });
  });
});

it('allows for what the quick way is off at the present setting', () => {
  const y = slow({
    ...toy('y'),
    from: { x },
    *steps({ x: given }): Steps<number> {
      yield 0.5;
      return given ** 2;
    },
    rough: ({ x: given }) => given ** 2 + 0.7,
  });
  const live = new Live([y]);
  live.look([x]);
  live.run();
  const found = (known?: number): number => drain(solveSteps(snapshot(live), y, 30, x, [0, 10], known)).values[0]!;
  expect(Math.abs(found() ** 2 - (30 - 0.7))).toBeLessThan(0.1);
  expect(Math.abs(found(1) ** 2 - 30)).toBeLessThan(0.1); // at x of 1 it is 1 in full
});

it('tells how far it is, after each look', () => {
  const { read, at } = of((v) => v ** 3);
  const shares = [...solveSteps(at, read, 103, x, [0, 10])].map(shareOf);
  expect(shares.length).toBeGreaterThan(5);
  expect(shares).toEqual(shares.toSorted((p, q) => p - q));
  expect(shares.at(-1)).toBeLessThanOrEqual(1);
});

it('waits for what its path stands on besides', () => {
  const { read } = of((v) => v);
  const live = new Live([read]);
  live.fail(b, { at: 'b', about: 'b', message: ['Write a figure.'] });
  expect(() => drain(solveSteps(snapshot(live), read, 1, x, [0, 1]))).toThrow(NotSettled);
});
