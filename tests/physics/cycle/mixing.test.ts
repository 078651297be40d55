import { describe, expect, it } from 'vitest';
import { Mixing } from '../../../src/physics/cycle/mixing.ts';

/** Repeats x -> 1 + k x, each number with its own k, until it keeps still; the fixed points are 1 / (1 - k). */
function repeats(slopes: readonly number[], mixed: boolean): { readonly turns: number; readonly state: Float64Array } {
  const mixing = new Mixing(slopes.length, slopes.length);
  const state = new Float64Array(slopes.length);
  const result = new Float64Array(slopes.length);
  for (let turns = 1; turns <= 1000; turns++) {
    slopes.forEach((k, i) => (result[i] = 1 + k * state[i]!));
    if (!(mixing.distance(state, result) > 1e-9)) return { turns, state };
    mixing.mix(state, result, mixed);
  }
  return { turns: Infinity, state };
}

describe('the mixture of the last results', () => {
  it('finds where slow repetitions end in a tenth of the time', () => {
    const slopes = [0.95, 0.9, -0.8, 0.3, 0];
    expect(repeats(slopes, false).turns).toBeGreaterThan(300);
    const { turns, state } = repeats(slopes, true);
    expect(turns).toBeLessThan(30);
    slopes.forEach((k, i) => expect(state[i]).toBeCloseTo(1 / (1 - k), 6));
  });

  it('finds where repetitions that swing further each time would stand still', () => {
    expect(repeats([-1.2, 0.5], false).turns).toBe(Infinity);
    const { turns, state } = repeats([-1.2, 0.5], true);
    expect(turns).toBeLessThan(20);
    expect(state[0]).toBeCloseTo(1 / 2.2, 6);
  });

  it('takes along the numbers that have no say', () => {
    const mixing = new Mixing(2, 1);
    const state = Float64Array.of(0, 0);
    for (let turn = 0; turn < 12; turn++)
      mixing.mix(state, Float64Array.of(1 + 0.9 * state[0]!, 1 + 0.9 * state[1]!), true);
    expect(state[0]).toBeCloseTo(10, 3);
    expect(state[1]).toBe(state[0]);
  });

  it('goes on from the result after a mixture was refused', () => {
    const mixing = new Mixing(1, 1);
    const state = Float64Array.of(0);
    mixing.mix(state, Float64Array.of(1), true);
    mixing.mix(state, Float64Array.of(1.9), true);
    mixing.refuse(state, Float64Array.of(1.9));
    expect(state[0]).toBe(1.9);
    mixing.mix(state, Float64Array.of(2.71), true); // nothing is remembered: plain again
    expect(state[0]).toBe(2.71);
  });
});
