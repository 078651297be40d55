import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { interpolate } from '../../src/numerics/interpolate.ts';

const xs = [0, 1, 4, 10];
const ys = [5, 7, 1, 1];

describe('interpolate', () => {
  it('reads entries as they stand and straight lines between them', () => {
    expect(xs.map((x) => interpolate(xs, ys, x))).toEqual(ys);
    expect(interpolate(xs, ys, 0.5)).toBe(6);
    expect(interpolate(xs, ys, 2)).toBe(5);
  });

  it('stays at the first and last entries outside the table', () => {
    expect(interpolate(xs, ys, -3)).toBe(5);
    expect(interpolate(xs, ys, 11)).toBe(1);
    expect(interpolate([2], [9], 7)).toBe(9);
  });

  it('gives a straight line back at any place of any table', () => {
    const increasing = fc
      .uniqueArray(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 20 })
      .map((values) => values.toSorted((a, b) => a - b));
    fc.assert(
      fc.property(increasing, fc.double({ min: 0, max: 1, noNaN: true }), (places, share) => {
        const x = places[0]! + share * (places.at(-1)! - places[0]!);
        const line = (at: number): number => 3 - 2 * at;
        expect(interpolate(Float64Array.from(places), places.map(line), x)).toBeCloseTo(line(x), 8);
      }),
    );
  });

  it('does not invent a reading for what is not a number', () => expect(interpolate(xs, ys, NaN)).toBeNaN());

  it('refuses an empty table and columns of different length', () => {
    expect(() => interpolate([], [], 1)).toThrow(RangeError);
    expect(() => interpolate([1, 2], [1], 1)).toThrow('The two columns of the table differ in length.');
  });
});
