import { describe, expect, it } from 'vitest';
import { cell, type Cell } from '../../src/graph/cell.ts';
import { verdict, wordAt } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';
import { NotSettled, snapshot, type Snapshot } from '../../src/graph/snapshot.ts';
import { solve } from '../../src/graph/solve.ts';
import { ratio } from '../../src/units/quantity.ts';
import { toy, typed } from './toy.ts';

const at = (...cells: Cell[]): Snapshot => {
  const live = new Live(cells);
  live.look(cells);
  live.run();
  return snapshot(live);
};
const x = typed('x', 1);
const b = typed('b', 3);
const of = (f: (x: number, b: number) => number) =>
  cell({ ...toy('y'), from: { x, b }, compute: ({ x, b }) => f(x, b) });

describe('a solve finds', () => {
  it('where a straight line meets its target', () => {
    const y = of((x, b) => 2 * x + b);
    expect(solve(at(y), y, 10, x, [0, 10])).toEqual({ values: [expect.closeTo(3.5, 11)], nearest: null });
  });

  it('every crossing of a curve, from the low end up', () => {
    const y = of((x) => x * (x - 4) * (x + 3));
    expect(solve(at(y), y, 0, x, [-10.1, 10]).values).toEqual([-3, 0, 4].map((value) => expect.closeTo(value, 9)));
  });

  it('an answer that lies on the grid once, at the ends too', () => {
    const y = of((x) => (x - 1) * (x - 3) * (x - 5));
    expect(solve(at(y), y, 0, x, [1, 5]).values).toEqual([1, 3, 5]);
  });

  it('the chamber for a compression ratio', () => {
    const chamber = typed('chamber', 7e-5, { hard: [1e-5, 1e-3] });
    const squeeze = cell({ ...toy('squeeze'), from: { chamber }, compute: ({ chamber }) => 1 + 7e-4 / chamber });
    const [found, ...more] = solve(at(squeeze), squeeze, 9.75, chamber, [4e-5, 1e-4]).values;
    expect(found).toBeCloseTo(7e-4 / 8.75, 15); // volume swept over ratio less one
    expect(more).toEqual([]);
  });

  it('the figure of a verdict', () => {
    const kind = verdict(ratio, [
      { id: 'low', label: 'low', tone: 'comfortable' },
      { id: 'high', label: 'high', tone: 'beyond' },
    ]);
    const judged = cell({
      ...toy('judged'),
      kind,
      from: { x },
      compute: ({ x }) => ({
        word: wordAt(kind, x * x, [9]),
        value: x * x,
        edges: [9],
        lead: [],
        place: [],
        advice: [],
      }),
    });
    expect(solve(at(judged), judged, 9, x, [0, 10.1]).values).toEqual([expect.closeTo(3, 10)]);
  });

  it('nothing where a pole or a step leaps over the target, and says how near it comes', () => {
    const pole = of((x) => 1 / (x - 0.123));
    expect(solve(at(pole), pole, 0, x, [-1, 1])).toEqual({ values: [], nearest: { at: -1, gives: -1 / 1.123 } });
    const step = of((x) => (x < 0.123 ? -1 : 2));
    expect(solve(at(step), step, 0, x, [-1, 1])).toEqual({ values: [], nearest: { at: -1, gives: -1 } });
  });

  it('nothing out of reach, and the nearest it comes on its grid', () => {
    const y = of((x) => (x - 2) ** 2 + 5);
    expect(solve(at(y), y, 4, x, [0, 4])).toEqual({ values: [], nearest: { at: 2, gives: 5 } });
  });

  it('what lies beside a stretch without an answer', () => {
    const y = of((x) => {
      if (x < 1) throw new RangeError('Too low.');
      return x * x;
    });
    expect(solve(at(y), y, 4, x, [-10, 10.1]).values).toEqual([expect.closeTo(2, 10)]);
    expect(solve(at(y), y, 0.25, x, [-10, 10]).nearest).toEqual({ at: 1.25, gives: 1.5625 });
  });

  it('nothing at all where there is no answer anywhere', () => {
    const y = of(() => {
      throw new RangeError('Never.');
    });
    expect(solve(at(y), y, 4, x, [-10, 10])).toEqual({ values: [], nearest: null });
  });
});

describe('a solve varies', () => {
  const twice = cell({ ...toy('twice'), from: { x }, compute: ({ x }) => 2 * x });
  const free = cell({ ...toy('free'), from: { twice, x }, compute: ({ twice, x }) => twice + 10 * x });

  it('a derived cell that nothing moves as if it were held', () => {
    expect(solve(at(free), free, 15, twice, [0, 10]).values).toEqual([expect.closeTo(5, 10)]); // x stays 1
  });

  it('a derived cell by its mover, so that all the mover moves is felt', () => {
    const moved = cell({
      ...toy('moved'),
      from: { x },
      movedBy: [{ label: 'x', inputs: [x] }],
      compute: ({ x }) => 2 * x,
    });
    const felt = cell({ ...toy('felt'), from: { moved, x }, compute: ({ moved, x }) => moved + 10 * x });
    expect(solve(at(felt), felt, 15, moved, [0, 10]).values).toEqual([expect.closeTo(2.5, 10)]); // 6 moved = 15
  });

  it('nothing before all it reads is settled', () => {
    const live = new Live([free]);
    expect(() => solve(snapshot(live), free, 15, twice, [0, 10])).not.toThrow();
    const beside = cell({ ...toy('beside'), from: { twice, b }, compute: ({ twice, b }) => twice + b });
    const empty = new Live([beside]);
    empty.fail(x, { at: 'x', about: 'x', message: ['Write a figure.'] });
    expect(() => solve(snapshot(empty), beside, 15, b, [0, 10])).toThrow(NotSettled);
  });
});
