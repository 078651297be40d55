import { describe, expect, it } from 'vitest';
import { knockLimitedSpark, octaneWith, suggestedSpark, torqueWith } from '../../../src/physics/cycle/spark-advice.ts';
import type { SparkTrial } from '../../../src/physics/cycle/spark-trial.ts';

/** Trials of an invented engine: torque a parabola with its top at 30, octane rising with a bend. */
const torque = (x: number): number => 300 - 40 * (x - 0.52) ** 2;
const octane = (x: number): number => 60 + 55 * x - 12 * x * x;
const trials: readonly SparkTrial[] = [0.02, 0.1, 0.2, 0.27, 0.36, 0.45, 0.52, 0.6, 0.66].map((advance) => ({
  advance,
  torque: torque(advance),
  octane: octane(advance),
}));
const last = trials.at(-1)!;

describe('torque and octane between the trials', () => {
  it('are those of a parabola where the trials lie on one, ends included', () => {
    for (let x = trials[0]!.advance; x <= last.advance; x += 0.007) {
      expect(torqueWith(trials, x)).toBeCloseTo(torque(x), 9);
      expect(octaneWith(trials, x)).toBeCloseTo(octane(x), 9);
    }
  });

  it('go through every trial without a corner', () => {
    const rough = trials.map((trial, i) => ({ ...trial, torque: trial.torque + (i % 2) * 3 }));
    for (const { advance, torque: there } of rough.slice(1, -1)) {
      expect(torqueWith(rough, advance)).toBeCloseTo(there, 9);
      const [before, after] = [-1e-6, 1e-6].map((by) => (torqueWith(rough, advance + by) - there) / by);
      expect(after! / before!).toBeCloseTo(1, 2);
    }
  });

  it('are held at both ends', () => {
    expect(torqueWith(trials, -1)).toBe(trials[0]!.torque);
    expect(octaneWith(trials, 2)).toBe(last.octane);
  });

  it('are straight between two trials, and one everywhere where there is but one', () => {
    expect(torqueWith([trials[0]!, last], 0.34)).toBeCloseTo((trials[0]!.torque + last.torque) / 2, 9);
    for (const x of [0, 0.02, 1]) expect(octaneWith([trials[0]!], x)).toBe(trials[0]!.octane);
  });

  it('without trials are refused', () => expect(() => torqueWith([], 0.3)).toThrow('There are no trials'));
});

describe('the spark that knock limits', () => {
  it('is where the fuel is just required', () => {
    for (const fuel of [64, 72, 80, 88]) {
      // 12 x2 - 55 x + fuel - 60 = 0
      const expected = (55 - Math.sqrt(55 ** 2 - 48 * (fuel - 60))) / 24;
      expect(knockLimitedSpark(trials, fuel)).toBeCloseTo(expected, 9);
    }
  });

  it('is the most that was tried where the fuel bears it all', () =>
    expect(knockLimitedSpark(trials, last.octane)).toBe(last.advance));

  it('is none where the fuel does not even bear the least', () =>
    expect(knockLimitedSpark(trials, trials[0]!.octane - 0.01)).toBeNull());

  it('is the last of several where the requirement falls and rises again', () => {
    const wavy = trials.map((trial, i) => (i === 3 ? { ...trial, octane: 95 } : trial));
    expect(knockLimitedSpark(wavy, 85)).toBeGreaterThan(trials[5]!.advance);
  });
});

describe('the suggested spark', () => {
  it('is the best with a good fuel, the knock limit with a poor one, none with one that knocks at any', () => {
    expect(suggestedSpark(trials, 0.5, 99)).toBe(0.5);
    expect(suggestedSpark(trials, 0.5, 70)).toBe(knockLimitedSpark(trials, 70));
    expect(suggestedSpark(trials, 0.5, 50)).toBeNull();
  });
});
