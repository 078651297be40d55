import { describe, expect, it } from 'vitest';
import { cycleEngine } from '../../../src/physics/cycle/engine.ts';
import type { CycleRecord } from '../../../src/physics/cycle/record.ts';
import { EngineRun } from '../../../src/physics/cycle/speed.ts';
import { built, degree, lateEight, milledFour, pushrodSix, rpm } from './street-engines.ts';

const engines = { lateEight: built(lateEight), milledFour: built(milledFour), pushrodSix: pushrodSix() };

/** By the trapezoid rule over the cycle, kg, from kg/s. */
function passed(flow: Float64Array, { angle }: CycleRecord, speed: number): number {
  let sum = 0;
  for (let i = 1; i < flow.length; i++) sum += ((flow[i]! + flow[i - 1]!) / 2) * ((angle[i]! - angle[i - 1]!) / speed);
  return sum;
}

for (const [name, input] of Object.entries(engines))
  for (const n of [1500, 5000]) {
    const speed = n * rpm;
    const run = new EngineRun(cycleEngine(input), 'coarse');
    const result = run.at(speed);
    const record = run.record();
    const { intakeFlow, exhaustFlow, intakeArea, exhaustArea, angle } = record;

    describe(`a recorded cycle of the ${name} at ${n} rpm`, () => {
      it('is every two degrees from bottom before firing', () => {
        for (const [i, each] of angle.entries()) expect(each / degree).toBeCloseTo(2 * i - 180, 9);
        for (const column of [
          record.cylinderPressure,
          record.intakePressure,
          record.exhaustPressure,
          intakeFlow,
          exhaustFlow,
          intakeArea,
          exhaustArea,
        ])
          expect(column.length).toBe(361);
      });

      it('lets in what the engine burns, and out what came in less what blew by', () => {
        // The engine's air and fuel flow, spread over its cylinders' cycles; the water comes with the air.
        const cycles = (input.cylinders * speed) / (4 * Math.PI); // a second
        const charge = (result.airFlow * (1 + input.waterRatio) + result.fuelFlow) / cycles;
        const [came, went] = [passed(intakeFlow, record, speed), passed(exhaustFlow, record, speed)];
        expect(came / charge).toBeCloseTo(1, 2);
        expect((went + result.blowBy) / came).toBeCloseTo(1, 2);
      });

      it('pushes back through the intake what the result says', () => {
        const back = passed(
          intakeFlow.map((flow) => Math.max(0, -flow)),
          record,
          speed,
        );
        expect(Math.abs(back - result.backflow)).toBeLessThan(0.01 * result.trappedAir);
      });

      it('flows only where a valve is open, and mostly the way it is meant to', () => {
        for (const [flow, area] of [
          [intakeFlow, intakeArea],
          [exhaustFlow, exhaustArea],
        ] as const) {
          for (let i = 1; i < 360; i++)
            if (area[i - 1] === 0 && area[i] === 0 && area[i + 1] === 0) expect(Math.abs(flow[i]!)).toBeLessThan(1e-12);
          expect(Math.max(...flow)).toBeGreaterThan(2 * Math.max(...flow.map((each) => -each)));
        }
        const overlap = exhaustArea.filter((area, i) => area > 0 && intakeArea[i]! > 0);
        expect(overlap.length).toBeGreaterThan(5);
      });

      it('has the cylinder’s pressure of the loop, and closes', () => {
        const { cylinderPressure } = record;
        for (let i = 0; i < 361; i++)
          expect(Math.abs(cylinderPressure[i]! / result.loop.pressure[2 * i]! - 1)).toBeLessThan(0.02);
        expect(cylinderPressure[360]! / cylinderPressure[0]!).toBeCloseTo(1, 2);
        for (const row of [record.intakePressure, record.exhaustPressure])
          expect(row[360]! / row[0]!).toBeCloseTo(1, 1);
      });

      it('has pipes whose first cell, nearest the valve, is near the pressure at the valve, and whose last lies at their end', () => {
        for (const [pipe, atValve, length] of [
          [record.runner, record.intakePressure, input.runnerLength],
          [record.primary, record.exhaustPressure, input.primaryLength],
        ] as const) {
          const cells = pipe.place.length;
          expect(pipe.pressure.length).toBe(361 * cells);
          expect(pipe.place[0]! + pipe.place[cells - 1]!).toBeCloseTo(length, 9);
          expect(pipe.place).toEqual(pipe.place.toSorted());
          const apart = (k: number): number =>
            Math.sqrt(atValve.reduce((sum, p, i) => sum + (pipe.pressure[i * cells + k]! - p) ** 2, 0) / 361);
          expect(apart(0)).toBeLessThan(0.5 * apart(cells - 1));
        }
      });

      it('has sound as fast as in warm air and in a hot exhaust', () => {
        // sqrt(1.4 x 287 T) of 300 to 380 K, and sqrt(1.3 x 290 T) of 800 to 1300 K
        expect(record.runner.sound).toBeGreaterThan(340);
        expect(record.runner.sound).toBeLessThan(395);
        expect(record.primary.sound).toBeGreaterThan(545);
        expect(record.primary.sound).toBeLessThan(705);
      });
    });
  }

describe('recording', () => {
  it('changes neither the state nor what is computed later', () => {
    const engine = cycleEngine({ ...engines.milledFour, spark: { heldTo: 80 } });
    const [one, other] = [new EngineRun(engine, 'coarse'), new EngineRun(engine, 'coarse')];
    for (const run of [one, other]) run.at(3000 * rpm);
    const state = one.state();
    one.record();
    expect(one.state()).toEqual(state);
    expect(one.at(3200 * rpm, state)).toEqual(other.at(3200 * rpm, state));
    expect(one.at(5000 * rpm)).toEqual(other.at(5000 * rpm));
  });

  it('twice gives the same to a thousandth', () => {
    const run = new EngineRun(cycleEngine(engines.milledFour), 'coarse');
    run.at(3000 * rpm);
    const [a, b] = [run.record(), run.record()];
    a.cylinderPressure.forEach((p, i) => expect(Math.abs(b.cylinderPressure[i]! / p - 1)).toBeLessThan(1e-3));
  });
});
