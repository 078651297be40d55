import { describe, expect, it } from 'vitest';
import { bandOf, differenceBand, type RangeEffects, shareOf } from '../../../src/physics/cycle/band.ts';
import { statedRanges } from '../../../src/physics/cycle/ranges.ts';
import { randomFrom } from '../valve/random.ts';

const none = statedRanges.map(() => 0);
const at = (form: 'curve' | 'halves' | 'oneSided'): number => statedRanges.findIndex((range) => range.form === form);
const effects = (atLow: readonly number[], atHigh: readonly number[], torque = 400): RangeEffects => ({
  speed: 300,
  torque,
  atLow,
  atHigh,
});

const between = randomFrom(11);
/** A standard normal number of steps (G. E. P. Box and M. E. Muller, 1958). */
const normal = (): number => Math.sqrt(-2 * Math.log(between(1e-9, 1))) * Math.cos(between(0, 2 * Math.PI));

/** 5 and 95 % of what the ranges do together, drawn. */
function drawn({ atLow, atHigh }: RangeEffects): readonly [number, number] {
  const sums = Array.from({ length: 10_000 }, () =>
    statedRanges.reduce((sum, { form }, k) => {
      const x = normal();
      const [low, high] = [atLow[k]!, atHigh[k]!];
      if (form === 'oneSided') return sum + high * Math.abs(x);
      if (form === 'halves') return sum + (x < 0 ? -low * x : high * x);
      return sum + ((high - low) / 2) * x + ((high + low) / 2) * x * x;
    }, 0),
  ).toSorted((a, b) => a - b);
  return [sums[500]!, sums[9500]!];
}

describe('a band', () => {
  it('of ranges that do as much either way is the root of the sum of squares', () => {
    const [low, high] = [none.with(0, -3).with(1, 4).with(5, -12), none.with(0, 3).with(1, -4).with(5, 12)];
    const { below, above } = bandOf(effects(low, high));
    expect(below).toBeCloseTo(13, 9);
    expect(above).toBeCloseTo(13, 9);
  });

  it('is none where nothing does anything, and not a number where an effect is not', () => {
    expect(bandOf(effects(none, none))).toEqual({ below: 0, above: 0 });
    expect(bandOf(effects(none.with(1, Number.NaN), none)).below).toBeNaN();
  });

  it('with one range that costs 9 one way and 1 the other is wider below', () => {
    for (const form of ['curve', 'halves'] as const) {
      const { below, above } = bandOf(effects(none.with(at(form), 1), none.with(at(form), -9)));
      expect(below).toBeGreaterThan(2 * above);
      expect(above).toBeGreaterThanOrEqual(0);
    }
  });

  it('has 5 and 95 % of what is drawn at 1.645 of it, within a tenth, for ranges as they are found', () => {
    // A street eight at 4500 rpm, another at its best spark at 3000, and one with a cross plane that matters, about.
    const found = [
      effects([-4, 6, -17, 6, 7, 12, 2, 0], [2, -52, 11, -17, -7, -12, -3, 0]),
      effects([0, 5, -17, 12, 8, 10, 0, 0], [0, -8, 11, -27, -7, -10, 0, -4]),
      effects([1, 4, -15, 11, 7, 9, 0, 0], [-1, -7, 9, -26, -8, -9, 0, -25]),
    ];
    for (const each of found) {
      const [low, high] = drawn(each);
      const { below, above } = bandOf(each);
      expect(Math.abs(-low / (1.645 * below) - 1)).toBeLessThan(0.1);
      expect(Math.abs(high / (1.645 * above) - 1)).toBeLessThan(0.1);
    }
  });
});

describe('the band of a difference', () => {
  const a = effects(none.with(0, -5).with(5, 8), none.with(0, 4).with(5, -9), 400);
  const b = effects(none.with(0, -6).with(5, 8), none.with(0, 6).with(5, -9), 410);

  it('is of the second less the first', () => expect(differenceBand(a, b).difference).toBe(10));

  it('has only what a range does to the one and not to the other', () => {
    const { below, above } = differenceBand(a, b);
    const alone = bandOf(effects(none.with(0, -1), none.with(0, 2)));
    expect(below).toBeCloseTo(alone.below, 12);
    expect(above).toBeCloseTo(alone.above, 12);
    expect(below).toBeLessThan(bandOf(a).below / 4);
  });

  it('of an engine from itself is nothing', () =>
    expect(differenceBand(a, a)).toEqual({ difference: 0, below: 0, above: 0 }));

  it('the other way round has its sides changed', () => {
    const [there, back] = [differenceBand(a, b), differenceBand(b, a)];
    expect(back.below).toBeCloseTo(there.above, 12);
    expect(back.above).toBeCloseTo(there.below, 12);
  });
});

describe('the share of a range', () => {
  it('is half of what lies between its ends, and the engine as it is', () => {
    const some = effects(none.with(0, -6).with(1, -2).with(3, 10), none.with(0, 4).with(1, -10).with(3, 2));
    for (const k of [0, 1, 3]) expect(shareOf(some, k)).toBe(5);
    expect(shareOf(some, 2)).toBe(0);
  });

  it('of no range is refused', () => expect(() => shareOf(effects(none, none), 99)).toThrow('There is no such range.'));
});
