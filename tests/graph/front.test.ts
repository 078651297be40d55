import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distinct, frontOf, type Sense, thinned } from '../../src/graph/front.ts';

const aimed = (...all: number[][]) => all.map((aims) => ({ aims }));
const figure = fc.integer({ min: 0, max: 12 });
const clouds = fc.array(fc.tuple(figure, figure), { minLength: 1, maxLength: 40 });
const senses = fc.constantFrom<Sense>(1, -1);

describe('a front', () => {
  it('is those that none beats in both aims, whichever way each is wanted', () => {
    fc.assert(
      fc.property(clouds, senses, senses, (cloud, a, b) => {
        const all = aimed(...cloud.map((pair) => [...pair]));
        const front = frontOf(all, [a, b]);
        const beats = (p: readonly number[], q: readonly number[]): boolean =>
          a * p[0]! >= a * q[0]! && b * p[1]! >= b * q[1]! && p.join() !== q.join();
        // Looked at one by one, without any order.
        const plain = all.filter((q) => !all.some((p) => beats(p.aims, q.aims)));
        expect([...new Set(plain.map((d) => d.aims.join()))].toSorted()).toEqual(
          front.map((d) => d.aims.join()).toSorted(),
        );
        // The best in the first aim stands first, and none stands there twice.
        const firsts = front.map((d) => a * d.aims[0]!);
        expect(firsts).toEqual(firsts.toSorted((p, q) => q - p));
      }),
    );
  });
  it('of one aim is its best', () => {
    expect(frontOf(aimed([3], [7], [7], [1]), [1])).toEqual(aimed([7]));
    expect(frontOf(aimed([3], [7], [1]), [-1])).toEqual(aimed([1]));
  });
  it('thinned keeps its ends, and takes from where it is crowded', () => {
    const front = aimed([9, 0], [8.9, 0.1], [8.8, 0.2], [8.7, 0.3], [4, 5], [0, 9]);
    const few = thinned(front, 4, [9, 9]);
    expect(few).toHaveLength(4);
    expect([few[0], few.at(-1)]).toEqual([front[0], front.at(-1)]);
    expect(few).toContainEqual({ aims: [4, 5] });
    expect(thinned(front, 10, [9, 9])).toEqual(front);
  });
});

it('distinct ones stand apart in one coordinate at least, the first of each place first', () => {
  const ordered = [
    [0.5, 0.5],
    [0.51, 0.49],
    [0.5, 0.56],
    [0.2, 0.5],
    [0.21, 0.52],
    [0.9, 0.9],
  ];
  expect(distinct(ordered, (p) => p, 0.05, 10)).toEqual([
    [0.5, 0.5],
    [0.5, 0.56],
    [0.2, 0.5],
    [0.9, 0.9],
  ]);
  expect(distinct(ordered, (p) => p, 0.05, 2)).toEqual([
    [0.5, 0.5],
    [0.5, 0.56],
  ]);
});
