import { describe, expect, it } from 'vitest';
import { gasSize, readState, stateSize, writeState } from '../../../src/physics/cycle/cycle-state.ts';
import { EngineCycle } from '../../../src/physics/cycle/cycle.ts';
import { type CycleEngine, cycleEngine } from '../../../src/physics/cycle/engine.ts';
import { gasoline } from '../../../src/physics/cycle/gas/tables.ts';
import { grids } from '../../../src/physics/cycle/grid.ts';
import { built, lateEight, milledFour, mountainSix, rpm, streetEight } from './street-engines.ts';

describe('a cycle', () => {
  const builds = { streetEight, lateEight, mountainSix, milledFour };
  for (const [name, build] of Object.entries(builds))
    it(`of the ${name} accounts for all gas and energy in the cylinder, to rounding`, () => {
      const engine = cycleEngine(built(build));
      const cycle = new EngineCycle(engine, grids.coarse);
      const { chamber } = cycle;
      for (const speed of [1000, 3500, 6000])
        for (let i = 0; i < 4; i++) {
          const { m, U } = chamber.gas;
          cycle.turn(speed * rpm);
          const mass = chamber.gas.m - m - chamber.massIn + chamber.massOut;
          const energy = chamber.gas.U - U - chamber.enthalpyIn + chamber.work + chamber.heat;
          const fuel = m * engine.gas.airShare * engine.gas.fuelRatio * gasoline.heatingValue;
          expect(Math.abs(mass / chamber.trappedMass)).toBeLessThan(1e-12);
          expect(Math.abs(energy / fuel)).toBeLessThan(1e-12);
          expect(chamber.heat).toBeGreaterThan(0);
        }
      expect(cycle.floors).toBe(0);
    });

  it('lands on every whole degree, at any speed', () => {
    const cycle = new EngineCycle(cycleEngine(built(streetEight)), grids.coarse);
    for (const speed of [900, 7000]) {
      cycle.turn(speed * rpm);
      expect(cycle.chamber.angle).toBe(540);
      expect(cycle.steps).toBeGreaterThanOrEqual(720);
    }
  });

  it('goes on from a written state as if nothing had been between', () => {
    const engine = cycleEngine({ ...built(streetEight), spark: 'best' });
    const one = new EngineCycle(engine, grids.coarse);
    for (let i = 0; i < 3; i++) one.turn(3000 * rpm);
    const state = new Float64Array(stateSize(one));
    writeState(one, state);
    const other = new EngineCycle(engine, grids.coarse);
    expect(readState(other, state)).toBe(true);
    for (const cycle of [one, other]) cycle.turn(3000 * rpm);
    expect(other.chamber.work / one.chamber.work).toBeCloseTo(1, 4); // the ends' first guesses are not in the state
    const again = new Float64Array(stateSize(one));
    readState(other, state);
    writeState(other, again);
    again.forEach((x, i) => expect(Math.abs(x - state[i]!)).toBeLessThanOrEqual(1e-9 * Math.abs(state[i]!)));
  });

  it('takes on no state that a gas cannot have', () => {
    const cycle = new EngineCycle(cycleEngine(built(streetEight)), grids.coarse);
    const state = new Float64Array(stateSize(cycle));
    writeState(cycle, state);
    const at = [0, gasSize(cycle) - 9, gasSize(cycle) - 5, gasSize(cycle) - 3]; // a pipe, both volumes, the cylinder
    for (const place of at) expect(readState(cycle, state.with(place, -1))).toBe(false);
    expect(readState(cycle, state)).toBe(true);
  });
});

describe('motored without heat, leak and fire', () => {
  const input = built(streetEight);
  const engine: CycleEngine = {
    ...cycleEngine({
      ...input,
      equivalenceRatio: 1,
      vaporizedShare: 1,
      waterRatio: 0,
      leakArea: 0,
      spark: [{ speed: 100, advance: -4 }], // after the exhaust has opened
    }),
    wallHeatFactor: 0,
  };

  for (const speed of [300, 1500, 5000])
    it(`at ${speed} rpm peaks where isentropic compression of the trapped charge does, within 0.05 %`, () => {
      const cycle = new EngineCycle(engine, grids.coarse);
      const { chamber } = cycle;
      for (let i = 0; i < 12; i++) cycle.turn(speed * rpm);
      expect(chamber.residual).toBeLessThan(1e-4);
      const ratio = chamber.volumeAt(engine.intakeCloses) / engine.clearance;
      const expected = isentropicPeak(chamber.trappedTemperature, chamber.trappedPressure, ratio);
      expect(Math.abs(chamber.peak / expected - 1)).toBeLessThan(5e-4);
      expect(chamber.peakAngle).toBe(0);
    });
});

// The judge's gas: nitrogen, oxygen and argon of NASA TM-4513, 1993, below 1000 K (a1 to a5); gasoline vapor of Heywood,
// 1988, eq. 4.47 and Table 4.11.
const air = [
  [3.773 * 0.99, 3.53100528, -0.000123660987, -5.02999437e-7, 2.43530612e-9, -1.40881235e-12],
  [1, 3.78245636, -0.00299673415, 9.847302e-6, -9.68129508e-9, 3.24372836e-12],
  [3.773 * 0.012, 2.5, 0, 0, 0, 0],
] as const;
const fuel = 1 / (8.26 + 15.5 / 4);

/** cv over R of the stoichiometric charge. */
function heatCapacity(T: number): number {
  const t = T / 1000;
  const vapor = 4.184 * (-24.078 + 256.63 * t - 201.68 * t ** 2 + 64.75 * t ** 3 + 0.5808 / t ** 2);
  let [moles, sum] = [fuel, (fuel * vapor) / 8.31451];
  for (const [n, a, b, c, d, e] of air) {
    moles += n;
    sum += n * (a + b * T + c * T ** 2 + d * T ** 3 + e * T ** 4);
  }
  return sum / moles - 1;
}

/** Constant entropy by volume: the integral of cv / R over ln T is ln of the volume ratio. */
function isentropicPeak(T0: number, p0: number, ratio: number): number {
  const step = 1e-5;
  let [lnT, lnV] = [Math.log(T0), 0];
  while (lnV < Math.log(ratio)) {
    lnV += step * heatCapacity(Math.exp(lnT + step / 2));
    lnT += step;
  }
  lnT -= (lnV - Math.log(ratio)) / heatCapacity(Math.exp(lnT));
  return (p0 * ratio * Math.exp(lnT)) / T0;
}
