import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linearSystem } from '../../src/numerics/linear-system.ts';

const rows = (...of: number[][]): Float64Array[] => of.map((row) => Float64Array.from(row));

describe('a linear system', () => {
  it('is solved for each right-hand side, by Cramer’s rule as well', () => {
    const [a, b, c, d] = [3, 7, -2, 5];
    const det = a * d - b * c;
    const found = linearSystem(rows([a, b], [c, d]), [
      [1, 0],
      [4, -6],
    ])!;
    expect(found.map((x) => [...x])).toEqual([
      [expect.closeTo(d / det, 12), expect.closeTo(-c / det, 12)],
      [expect.closeTo((4 * d + 6 * b) / det, 12), expect.closeTo((-6 * a - 4 * c) / det, 12)],
    ]);
  });
  it('with a zero where elimination would divide is solved all the same', () => {
    expect([...linearSystem(rows([0, 2], [4, 0]), [[6, 8]])![0]!]).toEqual([2, 3]);
  });
  it('whose rows repeat one another has no solution to give', () => {
    expect(linearSystem(rows([1, 2], [2, 4]), [[1, 2]])).toBe(null);
  });
  it('leaves its rows as they were', () => {
    const matrix = rows([2, 1], [1, 3]);
    linearSystem(matrix, [[1, 1]]);
    expect(matrix.map((row) => [...row])).toEqual([
      [2, 1],
      [1, 3],
    ]);
  });
  it('gives back, multiplied out, what it was given', () => {
    const figure = fc.double({ min: -10, max: 10, noNaN: true });
    fc.assert(
      fc.property(fc.array(figure, { minLength: 20, maxLength: 20 }), (figures) => {
        // A heavy diagonal tells all unknowns apart, whatever stands beside it.
        const matrix = Array.from({ length: 4 }, (_, i) =>
          Float64Array.from({ length: 4 }, (_, j) => figures[4 * i + j]! + (i === j ? 60 : 0)),
        );
        const right = figures.slice(16);
        const [x] = linearSystem(matrix, [right])!;
        matrix.forEach((row, i) => {
          const sum = row.reduce((total, v, j) => total + v * x![j]!, 0);
          expect(Math.abs(sum - right[i]!)).toBeLessThan(1e-11);
        });
      }),
    );
  });
});
