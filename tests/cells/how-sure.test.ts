import { describe, expect, it } from 'vitest';
import type { Derived, Slow } from '../../src/graph/cell.ts';
import type { Curve } from '../../src/graph/kind.ts';
import type { ModelError } from '../../src/graph/model-error.ts';
import { bandOf, type RangeEffects } from '../../src/physics/cycle/band.ts';
import { statedRanges } from '../../src/physics/cycle/ranges.ts';
import * as u from '../../src/units/unit.ts';
import { torqueErrorAt } from '../../cells/output/model-shares.ts';
import { cellOf } from '../notebook/notebooks.ts';
import { read, rough } from './roughly.ts';

const rpm = u.si(1, u.revolutionsPerMinute);
const few = { curveFrom: 1500 * rpm, curveTo: 5500 * rpm, curveStep: 2000 * rpm };
interface Band {
  readonly x: readonly number[];
  readonly torque: readonly number[];
  readonly below: readonly number[];
  readonly above: readonly number[];
}
const live = rough(few);
const [ranges, band, torqueError, powerError, torque, power] = read(
  live,
  'engineRanges',
  'torqueBand',
  'peakTorqueError',
  'peakPowerError',
  'torqueCurve',
  'powerCurve',
) as [readonly RangeEffects[], Band, ModelError, ModelError, Curve, Curve];
const effectsOf = (id: string, side: 'atLow' | 'atHigh'): number[] =>
  ranges.map((effects) => effects[side][statedRanges.findIndex((range) => range.id === id)]!);

/** The total of 34 degrees as a table, for a burn of other length: half has burned nine degrees after top again. */
const litFor = (factor: number) => ({
  sparkEntry: 'table',
  sparkAdvance: [
    [800, 14],
    [2800, 34],
  ].map(([speed, advance]) => [speed! * rpm, u.si(factor * (advance! + 9) - 9, u.degree)]),
});

describe('the model’s guesses, one at a time', () => {
  it.each([
    ['flow', 'flowFactor', 0.95, 1.05],
    ['burnTime', 'burnFactor', 0.8, 1.25],
    ['wallHeat', 'heatFactor', 0.8, 1.5],
    ['friction', 'frictionFactor', 0.8, 1.2],
    ['losses', 'lossFactor', 0.5, 1.5],
  ] as const)('%s does at its ends what the reader’s own factor does', (id, factor, low, high) => {
    for (const [side, value] of [
      ['atLow', low],
      ['atHigh', high],
    ] as const) {
      const [moved] = read(
        rough({ ...few, [factor]: value, ...(id === 'burnTime' ? litFor(value) : {}) }),
        'torqueCurve',
      ) as [Curve];
      effectsOf(id, side).forEach((effect, i) => {
        // Settled from another state: half a percent of the torque.
        expect(Math.abs(moved.y[i]! - torque.y[i]! - effect) / torque.y[i]!).toBeLessThan(0.006);
      });
    }
    const [trustLow, trustHigh] = (cellOf(factor) as { readonly trust?: readonly [number, number] }).trust!;
    expect([trustLow, trustHigh]).toEqual([low, high]);
  });
  it('pull the way they must', () => {
    for (const id of ['wallHeat', 'friction']) {
      for (const effect of effectsOf(id, 'atLow')) expect(effect, id).toBeGreaterThan(0);
      for (const effect of effectsOf(id, 'atHigh')) expect(effect, id).toBeLessThan(0);
    }
    for (const effect of effectsOf('completeness', 'atHigh')) expect(effect).toBeGreaterThan(0);
    // At the top, where valves choke, and the flame is late with the spark that is given.
    expect(effectsOf('flow', 'atHigh')[2]).toBeGreaterThan(0);
    expect(effectsOf('burnTime', 'atLow')[2]).toBeGreaterThan(0);
    expect(effectsOf('burnTime', 'atHigh')[2]).toBeLessThan(0);
  });
});

describe('the band', () => {
  it('is never narrower than single engines scatter: 12 % under 2000 rpm, 8 % over', () => {
    expect(band.x.map((x) => Math.round(x / rpm))).toEqual([1500, 3500, 5500]);
    band.torque.forEach((t, i) => {
      expect(t).toBe(torque.y[i]);
      const least = (i === 0 ? 0.12 : 0.08) * t;
      for (const side of [band.below[i]!, band.above[i]!]) expect(side).toBeGreaterThanOrEqual(least * (1 - 1e-12));
    });
  });
  it('is what the ranges make of it where that is more', () => {
    ranges.forEach((effects, i) => {
      const least = (i === 0 ? 0.12 : 0.08) * torque.y[i]!;
      const { below, above } = bandOf(effects);
      expect([band.below[i], band.above[i]]).toEqual([Math.max(below, least), Math.max(above, least)]);
    });
    expect(band.below[2]).toBeGreaterThan(0.08 * torque.y[2]!); // at the top
  });
});

describe('the ± of a peak', () => {
  it('is at least 8 % of it, and made of shares whose squares add up to its own', () => {
    for (const [error, peak] of [
      [torqueError, Math.max(...torque.y)],
      [powerError, Math.max(...power.y)],
    ] as const) {
      expect(error.plusMinus).toBeGreaterThanOrEqual(0.08 * peak);
      expect(Math.hypot(...error.shares.map((s) => s.change)) / error.plusMinus).toBeCloseTo(1, 9);
      const changes = error.shares.map((s) => s.change);
      expect(changes).toEqual(changes.toSorted((a, b) => b - a));
      expect(error.shares.map((s) => s.label)).toContain('Friction');
    }
  });
  it('is what single engines scatter by, beside what is known, where that is more', () => {
    const none = statedRanges.map(() => 0);
    const friction = statedRanges.map(({ id }) => (id === 'friction' ? 30 : 0));
    const known = (torqueNow: number): RangeEffects[] => [
      { speed: 300, torque: torqueNow, atLow: friction, atHigh: friction.map((f) => -f) },
    ];
    expect(torqueErrorAt(known(500), 300, 500)).toEqual({
      plusMinus: 40,
      shares: [
        { label: 'Friction', change: 30 },
        { label: 'What single engines scatter by besides', change: expect.closeTo(Math.sqrt(40 ** 2 - 30 ** 2), 9) },
      ],
    });
    expect(torqueErrorAt(known(300), 300, 300)).toEqual({
      plusMinus: 30,
      shares: [{ label: 'Friction', change: 30 }],
    });
    // Under 2000 rpm 12 %, and a range with nothing to it is not listed.
    expect(torqueErrorAt([{ speed: 100, torque: 100, atLow: none, atHigh: none }], 100, 100)).toEqual({
      plusMinus: 12,
      shares: [{ label: 'What single engines scatter by besides', change: 12 }],
    });
  });
  it('is told beside the figures it is about', () => {
    for (const [id, error] of [
      ['peakTorque', 'peakTorqueError'],
      ['peakPower', 'peakPowerError'],
      ['torqueAtSpeed', 'torqueAtSpeedError'],
      ['powerAtSpeed', 'powerAtSpeedError'],
    ] as const)
      expect((cellOf(id) as unknown as Derived<number>).modelError).toBe(cellOf(error));
  });
});

it('is looked for while nothing else waits, at a dozen speeds at most', () => {
  const cell = cellOf('engineRanges') as Slow;
  expect(cell.idle).toBe(true);
  const list = (step: number): readonly unknown[] =>
    cell.parts!.list({ curveFrom: 1000 * rpm, curveTo: 6500 * rpm, curveStep: step * rpm } as never);
  expect(list(500)).toHaveLength(12);
  const many = list(100) as readonly number[];
  expect(many).toHaveLength(12);
  expect([many[0], many.at(-1)].map((s) => Math.round(s! / rpm))).toEqual([1000, 6500]);
  expect(new Set(many).size).toBe(12);
});

it('leaves out a speed at which an end of a range does not settle', () => {
  const { join } = (cellOf('engineRanges') as Slow).parts!;
  const none = { ...ranges[0]!, atLow: ranges[0]!.atLow.map(() => NaN) };
  const together = (...results: readonly (RangeEffects | undefined)[]): unknown => join({} as never, results);
  expect(together(none, ranges[1], ranges[2])).toEqual([ranges[1], ranges[2]]);
  expect(together(undefined, ranges[1], ranges[2])).toBe(undefined);
  expect(() => together(none, none)).toThrow(/none of these speeds/);
});
