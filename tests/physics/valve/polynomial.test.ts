import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  inflection,
  liftPolynomial,
  placeAtHeight,
  polynomialArea,
  polynomialBend,
  polynomialHeight,
  polynomialSlope,
} from '../../../src/physics/valve/polynomial.ts';
import { Solver } from '../odex.ts';
import { DrawnLobe } from './drawn-lobe.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyPolynomial = fc
  .tuple(between(2.1, 60), fc.oneof(fc.constant(2), between(0.5, 24)))
  .map(([p, spacing]) => ({ p, spacing, curve: liftPolynomial(p, spacing) }));

describe('a lift polynomial', () => {
  it('has the height that elimination of its five equations gives', () => {
    fc.assert(
      fc.property(anyPolynomial, between(0, 1), ({ p, spacing, curve }, x) => {
        const judge = new DrawnLobe(p, spacing, 1, 1);
        expect(Math.abs(polynomialHeight(curve, x) - judge.liftAt(x))).toBeLessThan(1e-7);
      }),
    );
  });

  it('has slope and bend that fine differences give', () => {
    const h = 1e-5;
    fc.assert(
      fc.property(anyPolynomial, between(0.02, 0.98), ({ curve }, x) => {
        const slope = (polynomialHeight(curve, x + h) - polynomialHeight(curve, x - h)) / (2 * h);
        const bend = (polynomialSlope(curve, x + h) - polynomialSlope(curve, x - h)) / (2 * h);
        expect(Math.abs(polynomialSlope(curve, x) - slope)).toBeLessThan(1e-5);
        expect(Math.abs(polynomialBend(curve, x) - bend)).toBeLessThan(1e-4 * (1 + Math.abs(bend)));
      }),
    );
  });

  it('has the area that an integration with ODEX gives', () => {
    for (const [p, spacing] of [
      [2.1, 2],
      [6.5, 2],
      [30, 2],
      [4.2, 9],
    ] as const) {
      const curve = liftPolynomial(p, spacing);
      const solver = new Solver(1);
      solver.absoluteTolerance = solver.relativeTolerance = 1e-12;
      const { y } = solver.solve((x) => [polynomialHeight(curve, x)], 0, [0], 0.8);
      expect(polynomialArea(curve, 0.8)).toBeCloseTo(y[0]!, 10);
    }
  });

  it('falls all the way, and its slope turns once', () => {
    fc.assert(
      fc.property(anyPolynomial, between(0.001, 0.995), ({ curve }, x) => {
        expect(polynomialSlope(curve, x)).toBeLessThan(0);
        const turn = inflection(curve);
        if (Math.abs(x - turn) > 1e-6) expect(polynomialBend(curve, x) > 0).toBe(x > turn);
      }),
    );
  });

  it('is at rest at 1 and beyond', () => {
    const curve = liftPolynomial(7.3);
    for (const x of [1, 1.5])
      expect([polynomialHeight(curve, x), polynomialSlope(curve, x), polynomialBend(curve, x)]).toEqual([0, 0, 0]);
    const near = 1 - 1e-3; // a fivefold zero: a thousandth short of it the height is of order 1e-15 times a few hundred
    expect(polynomialHeight(curve, near)).toBeLessThan(1e-12);
  });

  it('finds the place of a height again', () => {
    fc.assert(
      fc.property(anyPolynomial, between(0.001, 0.999), ({ curve }, y) => {
        expect(polynomialHeight(curve, placeAtHeight(curve, y))).toBeCloseTo(y, 9);
      }),
    );
    expect([1.2, 1, 0, -0.1].map((y) => placeAtHeight(liftPolynomial(8), y))).toEqual([0, 0, 1, 1]);
  });

  it('refuses exponents that do not grow from 2', () => {
    expect(() => liftPolynomial(2)).toThrow('must be above 2');
    expect(() => liftPolynomial(NaN)).toThrow(RangeError);
    expect(() => liftPolynomial(6, 0)).toThrow('must grow');
  });
});
