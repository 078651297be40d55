import { describe, expect, it } from 'vitest';
import type { EngineInput } from '../../../src/physics/cycle/engine-input.ts';
import { refuseEngine } from '../../../src/physics/cycle/refuse-engine.ts';
import { type StatedRange, statedRanges } from '../../../src/physics/cycle/ranges.ts';
import { cycleEngine } from '../../../src/physics/cycle/engine.ts';
import { EngineRun } from '../../../src/physics/cycle/speed.ts';
import { built, degree, rpm, streetEight } from './street-engines.ts';

const engine = built(streetEight);
const of = (id: StatedRange['id'], steps: number, from: EngineInput = engine): EngineInput =>
  statedRanges.find((range) => range.id === id)!.with(from, steps);

/** Figures at the low end and the high one, over or beside those of the engine as it is: guesses, common practice. */
const ends: readonly (readonly [StatedRange['id'], (e: EngineInput) => number, number, number])[] = [
  ['flow', (e) => e.flowFactor, 0.95, 1.05],
  ['burnTime', (e) => e.burnTimeFactor / engine.burnTimeFactor, 0.8, 1.25],
  ['completeness', (e) => e.burnCompleteness, 0.93, 0.98],
  ['wallHeat', (e) => e.wallHeatFactor, 0.8, 1.5],
  ['runnerWall', (e) => e.runnerWall - engine.runnerWall, -25, 25],
  ['friction', (e) => e.frictionFactor, 0.8, 1.2],
  ['losses', (e) => e.runnerLoss / engine.runnerLoss, 0.5, 1.5],
  ['losses', (e) => e.primaryLoss / engine.primaryLoss, 0.5, 1.5],
  ['bank', (e) => e.bankBlend, 0, 0.5],
];

describe('a stated range', () => {
  for (const [id, figure, low, high] of ends)
    it(`of ${id} runs from ${low} to ${high}, rising, and touches nothing else`, () => {
      expect(figure(of(id, -1))).toBeCloseTo(low, 12);
      expect(figure(of(id, 1))).toBeCloseTo(high, 12);
      const ladder = [-1, -0.5, 0, 0.5, 1].map((steps) => figure(of(id, steps)));
      expect(ladder).toEqual(ladder.toSorted((a, b) => a - b));
      const changed = Object.entries(of(id, 1)).filter(([key, value]) => engine[key as keyof EngineInput] !== value);
      expect(changed.length).toBe(id === 'losses' || id === 'burnTime' ? 2 : 1);
    });

  it('at no steps is the engine as it is', () => {
    for (const { id } of statedRanges) expect(of(id, 0)).toEqual(engine);
  });

  it('counts from the engine’s own figures', () => {
    const own = { ...engine, wallHeatFactor: 1.2, frictionFactor: 0.9, burnCompleteness: 0.94, bankBlend: 0.2 };
    expect(of('wallHeat', 1, own).wallHeatFactor).toBeCloseTo(1.8, 12);
    expect(of('friction', -1, own).frictionFactor).toBeCloseTo(0.72, 12);
    expect(of('completeness', -1, own).burnCompleteness).toBeCloseTo(0.91, 12);
    expect(of('bank', 1, own).bankBlend).toBeCloseTo(0.7, 12);
  });

  it('three steps away is still an engine that can be computed', () => {
    for (const { id } of statedRanges)
      for (const steps of [-3, 3]) expect(() => refuseEngine(of(id, steps))).not.toThrow();
  });

  it('of burning time takes a table of spark along, so that half has burned where it had, within two degrees', () => {
    const half = (steps: number): number =>
      new EngineRun(cycleEngine(of('burnTime', steps)), 'coarse').at(4000 * rpm).halfBurned! / degree;
    for (const steps of [-1, 1]) expect(Math.abs(half(steps) - half(0))).toBeLessThan(2);
    const best = { ...engine, spark: 'best' as const };
    expect(of('burnTime', 1, best).spark).toBe('best');
  });

  it('has an id of its own', () =>
    expect(new Set(statedRanges.map((range) => range.id)).size).toBe(statedRanges.length));
});
