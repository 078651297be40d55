import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bernoulliSpeed } from '../../../src/physics/flow/bench.ts';
import { criticalPressureRatio, dropAtFlow, flowFunction, flowPerArea } from '../../../src/physics/flow/orifice.ts';
import { ratedAir, soundSpeed, type StillAir } from '../../../src/physics/flow/still-air.ts';

const gammas = [1.3, 1.35, 1.4];
const anyAir = fc.record({
  pressure: fc.double({ min: 5e4, max: 1.1e5, noNaN: true }),
  density: fc.double({ min: 0.6, max: 1.5, noNaN: true }),
});

describe('flow through an opening', () => {
  // Gas tables, NACA Report 1135 (1953): p/p0 and A/A* at Mach numbers of 0.5, 0.6, 0.9 and 1.
  it.each([
    [0.843, 1.3398],
    [0.784, 1.1882],
    [0.5913, 1.0089],
    [0.5283, 1],
  ])('at p/p0 of %f asks for %f times the area of a throat at sound speed', (ratio, area) => {
    expect(Math.abs(flowFunction(0, 1.4) / flowFunction(ratio, 1.4) / area - 1)).toBeLessThan(2e-4);
  });
  it('stops at equal pressures and beyond, and rises no more below the critical ratio', () => {
    for (const gamma of gammas) {
      const critical = criticalPressureRatio(gamma);
      expect(flowFunction(1, gamma)).toBe(0);
      expect(flowFunction(1.2, gamma)).toBe(0);
      expect(flowFunction(critical / 2, gamma)).toBe(flowFunction(critical, gamma));
      expect(flowFunction(critical * 1.01, gamma)).toBeLessThan(flowFunction(critical, gamma));
    }
  });
  it('falls all the way from the critical ratio to none', () => {
    for (const gamma of gammas) {
      const from = criticalPressureRatio(gamma);
      const flows = Array.from({ length: 101 }, (_, i) => flowFunction(from + ((1 - from) * i) / 100, gamma));
      flows.forEach((flow, i) => i > 0 && expect(flow).toBeLessThan(flows[i - 1]!));
    }
  });
  it('is Bernoulli’s at a small drop, and less at a larger one', () => {
    const share = (drop: number): number => flowPerArea(drop, ratedAir) / bernoulliSpeed(drop, ratedAir.density);
    expect(share(50)).toBeCloseTo(1, 3);
    expect(share(7000)).toBeLessThan(0.97);
    expect(share(30_000)).toBeLessThan(share(7000));
  });
  it('and the drop that a flow asks for are the same thing read either way', () => {
    fc.assert(
      fc.property(anyAir, fc.double({ min: 0, max: 0.47, noNaN: true }), (air: StillAir, share) => {
        const drop = share * air.pressure;
        expect(Math.abs(dropAtFlow(flowPerArea(drop, air), air)! - drop)).toBeLessThan(1e-6 * air.pressure);
      }),
      { seed: 20260801, numRuns: 300 },
    );
  });
  it('has no drop for more than a choked opening passes, and none to speak of where nothing flows', () => {
    const most = flowPerArea(ratedAir.pressure, ratedAir);
    expect(dropAtFlow(most * 1.0001, ratedAir)).toBeNull();
    expect(dropAtFlow(0, ratedAir)).toBe(0);
  });
});

it('sound runs at 340.3 m/s in the standard atmosphere at sea level', () =>
  // U.S. Standard Atmosphere, 1976, table III: 340.294 m/s.
  expect(soundSpeed(288.15)).toBeCloseTo(340.294, 2));
