import { describe, expect, it } from 'vitest';
import { cycleEngine } from '../../../src/physics/cycle/engine.ts';
import { gasoline } from '../../../src/physics/cycle/gas/tables.ts';
import { EngineRun } from '../../../src/physics/cycle/speed.ts';
import { built, degree, lateEight, milledFour, rpm, streetEight } from './street-engines.ts';

const input = { ...built(streetEight), spark: 'best' } as const;
const engine = cycleEngine(input);

describe('a result', () => {
  const run = new EngineRun(engine, 'coarse');
  const result = run.at(4500 * rpm);

  it('is the same to the last digit whatever was computed before', () => {
    const busy = new EngineRun(engine, 'coarse');
    busy.at(1000 * rpm);
    busy.at(6500 * rpm);
    busy.at(2500 * rpm, busy.state());
    new EngineRun(cycleEngine(built(milledFour)), 'coarse').at(3000 * rpm);
    expect(busy.at(4500 * rpm)).toEqual(result);
    expect(new EngineRun(cycleEngine(input), 'coarse').at(4500 * rpm)).toEqual(result);
    expect(result.fromNear).toBe(false);
  });

  it('begun from a neighbor takes fewer cycles, says so, and is within 0.6 % of the other', () => {
    const state = run.state();
    const other = cycleEngine({ ...input, runnerDiameter: input.runnerDiameter * 1.02 });
    const far = new EngineRun(other, 'coarse').at(4500 * rpm);
    const near = new EngineRun(other, 'coarse').at(4500 * rpm, state);
    expect(near.fromNear).toBe(true);
    expect(near.cycles).toBeLessThan(far.cycles);
    expect(Math.abs(near.torque / far.torque - 1)).toBeLessThan(0.006);
  });

  it('begins from rest where the given state is of other pipes', () => {
    const long = new EngineRun(cycleEngine({ ...input, primaryLength: 1.2 }), 'coarse');
    const cold = long.at(4500 * rpm);
    expect(long.at(4500 * rpm, run.state())).toEqual(cold);
  });

  it('has torque, power and mean pressures that say the same', () => {
    const displacement = engine.swept * 8;
    expect(result.brakePressure).toBeCloseTo(result.indicatedPressure - result.frictionPressure, 6);
    expect(result.power).toBeCloseTo(result.torque * 4500 * rpm, 6);
    expect(result.power).toBeCloseTo((result.brakePressure * displacement * 4500) / 120, 3); // a cycle in two turns
  });

  it('has a loop whose area is the indicated work, and the part around the gas exchange the pumping', () => {
    const { pressure, volume, angle } = result.loop;
    let [work, pumping] = [0, 0];
    for (let i = 1; i < pressure.length; i++) {
      const part = ((pressure[i]! + pressure[i - 1]!) / 2) * (volume[i]! - volume[i - 1]!);
      work += part;
      if (i > 360) pumping += part;
    }
    expect(work / engine.swept / result.indicatedPressure).toBeCloseTo(1, 2);
    expect(Math.abs(pumping / engine.swept - result.pumpingPressure)).toBeLessThan(1e3);
    expect(angle[180]).toBe(0);
    expect(volume[180]).toBeCloseTo(engine.clearance, 12);
    expect(Math.max(...pressure)).toBe(result.peakPressure);
    expect(pressure[Math.round(result.peakAngle / degree) + 180]).toBe(result.peakPressure);
  });

  it('takes the fuel of its mixture, and makes of it what such engines make', () => {
    const stoichiometric = 14.6; // J. B. Heywood, 1988, Table D.4 (from memory), gasoline
    expect((result.fuelFlow / result.airFlow) * stoichiometric).toBeCloseTo(1.15, 1);
    // J. B. Heywood, 1988, sec. 2.8: best about 270 g/kWh; rich full load is well above that
    const grams = result.specificFuel * 3.6e9;
    expect(grams).toBeGreaterThan(265);
    expect(grams).toBeLessThan(340);
    expect(result.specificFuel * gasoline.heatingValue).toBeGreaterThan(1);
  });

  it('has the blow-by, gas temperatures and heat of a sound engine', () => {
    // Common practice, no source: 0.3 to 1.2 % of the charge; 900 to 1200 K in a full-load collector.
    expect(result.blowBy / result.trappedAir).toBeGreaterThan(0.003);
    expect(result.blowBy / result.trappedAir).toBeLessThan(0.012);
    expect(result.collectorTemperature).toBeGreaterThan(900);
    expect(result.collectorTemperature).toBeLessThan(1200);
    expect(result.plenumPressure).toBeLessThan(engine.airPressure);
    expect(result.plenumPressure).toBeGreaterThan(0.9 * engine.airPressure);
    expect(result.settled).toBe(true);
    expect(Math.abs(result.imbalance)).toBeLessThan(3e-3);
  });
});

describe('the grid', () => {
  for (const [name, build] of Object.entries({ lateEight, milledFour }))
    it(`coarse is within 1.5 % rms of the fine one, the medium within 0.8, for the ${name}`, () => {
      const ready = cycleEngine(built(build));
      const rms = (grid: 'coarse' | 'medium'): number => {
        const [run, fine] = [new EngineRun(ready, grid), new EngineRun(ready, 'fine')];
        const errors = [2500, 5500].map((n) => run.at(n * rpm).torque / fine.at(n * rpm).torque - 1);
        return Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length);
      };
      expect(rms('coarse')).toBeLessThan(0.015);
      expect(rms('medium')).toBeLessThan(0.008);
    });

  it('coarse gives the fine one’s differences between builds within half a point', () => {
    const ready = built(streetEight);
    const other = cycleEngine({ ...ready, runnerLength: 0.305, staticRatio: 10.54 });
    for (const n of [2500, 5500]) {
      const gain = (grid: 'coarse' | 'fine'): number =>
        new EngineRun(other, grid).at(n * rpm).torque / new EngineRun(cycleEngine(ready), grid).at(n * rpm).torque;
      expect(Math.abs(gain('coarse') - gain('fine'))).toBeLessThan(0.005);
    }
  });
});

it('a speed no crankshaft turns at is refused', () => {
  const run = new EngineRun(engine, 'coarse');
  for (const speed of [0, 5000, Number.NaN])
    expect(() => run.at(speed)).toThrow('The speed must lie between 20 and 2000 rad/s.');
});
