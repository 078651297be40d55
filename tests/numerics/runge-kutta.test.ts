import { describe, expect, it } from 'vitest';
import { rungeKutta } from '../../src/numerics/runge-kutta.ts';

/** Follows y'' = -y from y = 1 at rest to t = 2 and returns y. */
const swing = (steps: number): number => {
  const state = Float64Array.of(1, 0);
  const advance = rungeKutta(2, (_t, y, rate) => {
    rate[0] = y[1]!;
    rate[1] = -y[0]!;
  });
  for (let i = 0; i < steps; i++) advance((2 * i) / steps, 2 / steps, state);
  return state[0]!;
};

describe('rungeKutta', () => {
  it('follows a swing to the cosine', () => expect(swing(200)).toBeCloseTo(Math.cos(2), 9));

  it('is of fourth order: halving the step divides the error by sixteen', () => {
    const error = (steps: number): number => Math.abs(swing(steps) - Math.cos(2));
    expect(error(20) / error(40)).toBeGreaterThan(14);
    expect(error(20) / error(40)).toBeLessThan(18);
  });

  it('is exact for a cubic in time, as its weights are those of Simpson', () => {
    const state = Float64Array.of(0);
    rungeKutta(1, (t, _y, rate) => void (rate[0] = 4 * t ** 3))(1, 2, state);
    expect(state[0]).toBeCloseTo(3 ** 4 - 1, 12);
  });

  it("does in one step what the worked first step of y' = y gives: 1 + h + h2/2 + h3/6 + h4/24", () => {
    const state = Float64Array.of(1);
    rungeKutta(1, (_t, y, rate) => void (rate[0] = y[0]!))(0, 0.5, state);
    expect(state[0]).toBeCloseTo(1 + 0.5 + 0.125 + 0.125 / 6 + 0.0625 / 24, 14);
  });
});
