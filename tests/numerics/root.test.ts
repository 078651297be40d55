import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { root } from '../../src/numerics/root.ts';

describe('root', () => {
  it('finds the square root of two, the number with cos x = x, and the omega constant (standard tables)', () => {
    expect(root((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 11);
    expect(root((x) => Math.cos(x) - x, 0, 1)).toBeCloseTo(0.7390851332151607, 11);
    expect(root((x) => x * Math.exp(x) - 1, 0, 1)).toBeCloseTo(0.567143290409784, 11);
  });

  it('finds any cubic root back, whichever end is named first', () => {
    const place = fc.double({ min: -0.9, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(place, fc.boolean(), (x0, swap) => {
        const f = (x: number): number => (x - x0) * ((x - x0) ** 2 + 0.1);
        const found = swap ? root(f, 1, -1) : root(f, -1, 1);
        expect(Math.abs((found ?? NaN) - x0)).toBeLessThan(3e-12);
      }),
    );
  });

  it('asks far less often than halving would, 42 times for this tolerance', () => {
    let asked = 0;
    root((x) => (asked++, Math.exp(x) - 5), 0, 4);
    expect(asked).toBeLessThan(15);
  });

  it('pins a step down although no straight line meets it', () => {
    expect(root((x) => (x < 0.3 ? -1 : 1e6), 0, 1)).toBeCloseTo(0.3, 11);
  });

  it('takes a crossing that lies on an end', () => {
    expect(root((x) => x, 0, 1)).toBe(0);
    expect(root((x) => x - 1, 0, 1)).toBe(1);
  });

  it('stops early when told to be content with less', () => {
    let [fine, coarse] = [0, 0];
    root((x) => (fine++, x ** 3 - 0.2), 0, 1);
    const rough = root((x) => (coarse++, x ** 3 - 0.2), 0, 1, 1e-3);
    expect(coarse).toBeLessThan(fine);
    expect(Math.abs((rough ?? NaN) - 0.2 ** (1 / 3))).toBeLessThan(1e-3);
  });

  it('answers null without a change of sign, and where the function is not a number at an end or on the way', () => {
    expect(root((x) => x * x + 1, -1, 1)).toBeNull();
    expect(root(Math.log, -1, 2)).toBeNull();
    expect(root((x) => (x === 0 ? -1 : x === 1 ? 1 : NaN), 0, 1)).toBeNull();
  });

  it('works where the function is tiny throughout', () => {
    expect(root((x) => 1e-200 * (x - 0.25), 0, 1)).toBeCloseTo(0.25, 11);
  });
});
