import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { maximumAt } from '../../src/numerics/maximum.ts';

describe('maximumAt', () => {
  it('finds a smooth peak wherever it lies', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), (top) => {
        expect(maximumAt((x) => -((x - top) ** 2), -3, 3)).toBeCloseTo(top, 6);
      }),
    );
  });

  it('takes the higher of two peaks', () =>
    expect(maximumAt((x) => Math.sin(x) + 0.1 * x, 0, 4 * Math.PI)).toBeCloseTo(2.5 * Math.PI + Math.asin(0.1), 6));

  it('takes an end that is higher than everything inside', () => {
    expect(maximumAt((x) => x, 0, 1)).toBe(1);
    expect(maximumAt((x) => -x, 0, 1)).toBe(0);
  });
});
