import { describe, expect, it } from 'vitest';
import { cell, type Cell, slow } from '../../src/graph/cell.ts';
import { Live } from '../../src/graph/live.ts';
import { snapshot, type Snapshot } from '../../src/graph/snapshot.ts';
import { type PairSearch, solvePair } from '../../src/graph/solve-pair.ts';
import { Impossible } from '../../src/graph/state.ts';
import { toy, typed } from './toy.ts';

const at = (...cells: Cell[]): Snapshot => {
  const live = new Live(cells);
  live.look(cells);
  live.run();
  return snapshot(live);
};
const x = typed('x', 1);
const y = typed('y', 2);
const of = (id: string, f: (x: number, y: number) => number) =>
  cell({ ...toy(id), from: { x, y }, compute: ({ x, y }) => f(x, y) });
const both = (
  read: readonly [Cell, Cell],
  targets: readonly [number, number],
  reach: readonly [number, number] = [0, 10],
): PairSearch => ({ read, targets, vary: [x, y], ranges: [reach, reach] });

describe('a solve for two finds', () => {
  it('where two straight lines cross, as Cramer’s rule has it', () => {
    const [f, g] = [of('f', (x, y) => 3 * x + 2 * y), of('g', (x, y) => x - 4 * y)];
    // 3x + 2y = 16, x − 4y = −4: det −14, x = (16·−4 − 2·−4) / −14 = 4, y = (3·−4 − 1·16) / −14 = 2.
    const { values, nearest, bond } = solvePair(at(f, g), both([f, g], [16, -4]));
    expect(values![0]).toBeCloseTo(4, 8);
    expect(values![1]).toBeCloseTo(2, 8);
    expect([nearest, bond]).toEqual([null, null]);
  });

  it('where a circle meets a hyperbola', () => {
    const [f, g] = [of('f', (x, y) => x * x + y * y), of('g', (x, y) => x * y)];
    // x² + y² = 25 and xy = 12: the sides of the triangle of Pythagoras.
    const { values } = solvePair(at(f, g), both([f, g], [25, 12]));
    expect(values!.toSorted((a, b) => a - b)).toEqual([expect.closeTo(3, 7), expect.closeTo(4, 7)]);
  });

  it('an answer from the grid where the present point leads into a dead end', () => {
    const f = of('f', (x, y) => (x - 1) ** 4 - 18 * (x - 1) ** 2 + y); // humps at x = −2 and 4, flat at 1
    const g = of('g', (_, y) => y);
    const { values } = solvePair(at(f, g), both([f, g], [-79, 2])); // −81 + y at the humps
    expect(values![1]).toBeCloseTo(2, 7);
    expect(values![0]).toBeCloseTo(4, 3);
  });

  it('an answer on the bounds', () => {
    const [f, g] = [of('f', (x, y) => x + y), of('g', (x, y) => x - y)];
    const { values } = solvePair(at(f, g), both([f, g], [10, 10]));
    expect(values).toEqual([expect.closeTo(10, 8), expect.closeTo(0, 8)]);
  });

  it('what lies beside a stretch without an answer', () => {
    const root = of('root', (x, y) => {
      if (x < y) throw new RangeError('Too low.');
      return Math.sqrt(x - y);
    });
    const sum = of('sum', (x, y) => x + y);
    const { values } = solvePair(at(root, sum), both([root, sum], [2, 10])); // x − y = 4, x + y = 10
    expect(values).toEqual([expect.closeTo(7, 7), expect.closeTo(3, 7)]);
  });

  it('what lies in a narrow stretch with an answer, from the edge of it', () => {
    const edge = typed('edge', 3);
    const narrow = (f: (x: number, y: number) => number) => (given: { readonly edge: number; readonly y: number }) => {
      if (given.edge < 2.9 || given.edge > 3) throw new RangeError('Only there.');
      return f(given.edge, given.y);
    };
    const f = cell({ ...toy('f'), from: { edge, y }, compute: narrow((x, y) => x + 2 * y) });
    const g = cell({ ...toy('g'), from: { edge, y }, compute: narrow((x, y) => x - y) });
    const search = { ...both([f, g], [10.95, -1.05]), vary: [edge, y] as const };
    expect(solvePair(at(f, g), search).values).toEqual([expect.closeTo(2.95, 7), expect.closeTo(4, 7)]);
  });
});

describe('out of reach, a solve for two says', () => {
  it('the nearest pair on one bound, where the other value still makes good what it can', () => {
    const [f, g] = [of('f', (x) => x), of('g', (x, y) => x + y)];
    const { values, nearest } = solvePair(at(f, g), both([f, g], [12, 14])); // x stops at 10: y is 4
    expect(values).toBeNull();
    expect(nearest!.at).toEqual([10, expect.closeTo(4, 6)]);
  });

  it('so of a hair as well', () => {
    const [f, g] = [of('f', (x) => x), of('g', (_, y) => y)];
    expect(solvePair(at(f, g), both([f, g], [10.000001, 5])).values).toBeNull();
    expect(solvePair(at(f, g), both([f, g], [10, 5])).values).not.toBeNull();
  });

  it('the nearest pair: the corner of a square for straight lines', () => {
    const [f, g] = [of('f', (x) => x), of('g', (_, y) => y)];
    const { values, nearest } = solvePair(at(f, g), both([f, g], [12, 14]));
    expect(values).toBeNull();
    expect(nearest).toEqual({ at: [10, 10], gives: [10, 10] });
  });

  it('the nearest pair inside the square, off the grid: the foot of a perpendicular', () => {
    const [f, g] = [of('f', (x) => x), of('g', (x, y) => Math.hypot(x - 3.21, y - 4.32) + 5)];
    const { nearest } = solvePair(at(f, g), both([f, g], [3.21, 0]));
    expect(nearest!.at).toEqual([expect.closeTo(3.21, 2), expect.closeTo(4.32, 2)]);
  });

  it('something of every target, however wild', () => {
    const [f, g] = [of('f', (x, y) => x + y), of('g', (x, y) => x - y)];
    for (const target of [-1e9, 1e300, -1e300]) {
      const { values, nearest, bond } = solvePair(at(f, g), both([f, g], [target, 0]));
      expect(values).toBeNull();
      expect(nearest!.gives.every(Number.isFinite)).toBe(true);
      expect(bond).toBeNull();
    }
  });

  it('nothing where there is no answer anywhere', () => {
    const [f, g] = [of('f', (x) => x), of('g', () => Math.log(-1))];
    expect(solvePair(at(f, g), both([f, g], [1, 1]))).toEqual({ values: null, nearest: null, bond: null });
  });
});

describe('a solve for two tells why two values do not set two results apart:', () => {
  const sum = (x: number, y: number): number => x + 2 * y;
  it('both move the same thing, whatever comes of that', () => {
    const [f, g] = [of('f', (x, y) => 1 + 7 / (1 + sum(x, y))), of('g', (x, y) => sum(x, y) ** 2)];
    const missed = solvePair(at(f, g), both([f, g], [2, 1]));
    expect([missed.values, missed.bond]).toEqual([null, { is: 'together' }]);
    // Where the two targets agree, one of the many pairs is found all the same: a sum of 9.
    const met = solvePair(at(f, g), both([f, g], [1.7, 81]));
    expect(sum(...met.values!)).toBeCloseTo(9, 6);
    expect(met.bond).toEqual({ is: 'together' });
  });
  it('one of the values moves neither', () => {
    const [f, g] = [of('f', (x) => x), of('g', (x) => x * x)];
    expect(solvePair(at(f, g), both([f, g], [2, 9])).bond).toEqual({ is: 'idle', which: 1 });
  });
  it('neither value moves one of the results', () => {
    const [f, g] = [of('f', (x, y) => x * y), of('g', () => 5)];
    expect(solvePair(at(f, g), both([f, g], [2, 9])).bond).toEqual({ is: 'fixed', which: 1 });
  });
});

describe('a solve for two', () => {
  it('varies a derived cell by its mover, so that all the mover moves is felt', () => {
    const moved = cell({
      ...toy('moved'),
      from: { x },
      movedBy: [{ label: 'x', inputs: [x] }],
      compute: ({ x }) => 2 * x,
    });
    const felt = cell({ ...toy('felt'), from: { moved, x, y }, compute: ({ moved, x, y }) => moved + 10 * x + y });
    const other = cell({ ...toy('other'), from: { x, y }, compute: ({ x, y }) => x - y });
    const { values } = solvePair(at(felt, other), { ...both([felt, other], [29, -3]), vary: [moved, y] });
    expect(values).toEqual([expect.closeTo(4, 7), expect.closeTo(5, 7)]); // 12x + y = 29 and x − y = −3: x = 2
  });
  it('is refused where one input would move both values, and where the work is slow', () => {
    const moved = cell({ ...toy('moved'), from: { x }, movedBy: [{ label: 'x', inputs: [x] }], compute: ({ x }) => x });
    const f = cell({ ...toy('f'), from: { moved, y }, compute: ({ moved, y }) => moved + y });
    expect(() => solvePair(at(f, moved), { ...both([f, f], [1, 1]), vary: [moved, x] })).toThrow(Impossible);
    const late = slow({
      ...toy('late'),
      from: { x, y },
      *steps({ x, y }) {
        yield 0.5;
        return x + y;
      },
    });
    expect(() => solvePair(at(f, late), both([f, late], [1, 1]))).toThrow('worked out at once');
  });
});
