import { describe, expect, it } from 'vitest';
import { knockRate, moistureRelief, octaneRequirement } from '../../../src/physics/cycle/knock.ts';
import { type ClosedCylinder, closedCycle, ordinary } from './closed-cylinder.ts';

const required = (change: Partial<ClosedCylinder>): number =>
  octaneRequirement(closedCycle({ ...ordinary, ...change }).knock);

describe('octaneRequirement', () => {
  it('is 100 where a fuel of 100 would just knock, and next to nothing without an end gas', () => {
    expect(octaneRequirement(1)).toBe(100);
    expect(octaneRequirement(0)).toBeLessThan(2);
  });

  it('is the octane number that divides the integral down to one', () => {
    // the induction time grows with the 3.402 power of the octane number (SAE 780080, from memory)
    for (const integral of [0.3, 0.8, 1.7])
      expect(integral / (octaneRequirement(integral) / 100) ** 3.402).toBeCloseTo(1, 12);
  });
});

describe('knockRate', () => {
  it('falls to nothing in cold gas and grows with pressure and temperature', () => {
    expect(knockRate(1e5, 300)).toBeLessThan(1e-3);
    expect(knockRate(30e5, 850)).toBeGreaterThan(knockRate(30e5, 800));
    expect(knockRate(31e5, 800)).toBeGreaterThan(knockRate(30e5, 800));
  });
});

describe('the octane a cylinder requires', () => {
  it('rises by 3 to 9 for a unit of ratio, where SAE 960497 has 5', () => {
    const slope = required({ speed: 2000, ratio: 10 }) - required({ speed: 2000, ratio: 9 });
    expect(slope).toBeGreaterThan(3);
    expect(slope).toBeLessThan(9);
  });

  it('rises by 0.5 to 1.6 for a degree of spark, where SAE 960497 has 1', () => {
    const slope = (required({ speed: 2000, spark: 24 }) - required({ speed: 2000, spark: 18 })) / 6;
    expect(slope).toBeGreaterThan(0.5);
    expect(slope).toBeLessThan(1.6);
  });

  it('falls with speed, which leaves the end gas less time', () =>
    expect(required({ speed: 2000 })).toBeGreaterThan(required({ speed: 3000 }) + 2));
});

describe('moistureRelief', () => {
  it('makes with the cycle’s own 0.06 the 0.25 to 0.35 for a gram per kilogram of SAE 960497', () => {
    const own = -0.06;
    const slope = moistureRelief(0.011) - moistureRelief(0.01) + own;
    expect(slope).toBeLessThan(-0.25);
    expect(slope).toBeGreaterThan(-0.35);
  });

  it('is nothing at 7 g/kg', () => expect(moistureRelief(0.007)).toBeCloseTo(0, 12));
});
