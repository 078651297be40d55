import { describe, expect, it } from 'vitest';
import { cycleEngine } from '../../../src/physics/cycle/engine.ts';
import { EngineRun } from '../../../src/physics/cycle/speed.ts';
import { built, degree, lateEight, milledFour, rpm, streetEight } from './street-engines.ts';

const speeds = [1500, 3500, 5500].map((n) => n * rpm);

describe('the best spark', () => {
  for (const [name, build] of Object.entries({ streetEight, lateEight, milledFour })) {
    const input = built(build);
    const best = new EngineRun(cycleEngine({ ...input, spark: 'best' }), 'coarse');
    const torqueAt = (speed: number, advance: number): number =>
      new EngineRun(cycleEngine({ ...input, spark: [{ speed, advance }] }), 'coarse').at(speed).torque;

    for (const speed of speeds) {
      const n = Math.round(speed / rpm);
      const found = best.at(speed);

      it(`of the ${name} at ${n} rpm makes, within 0.5 %, the most of all from 12 later to 12 earlier`, () => {
        const tried = [-12, -8, -4, -2, 2, 4, 8, 12].map((later) => torqueAt(speed, found.spark - later * degree));
        expect(found.torque).toBeGreaterThan(0.995 * Math.max(...tried));
      });

      // Common practice, no source: best torque has half of the charge burned some 5 to 10 degrees after top.
      it(`of the ${name} at ${n} rpm has half burned 3 to 11 degrees after top`, () => {
        expect(found.halfBurned).toBeGreaterThan(3 * degree);
        expect(found.halfBurned).toBeLessThan(11 * degree);
      });

      // Common practice, no source: ten degrees late cost 4 to 6 %.
      it(`of the ${name} at ${n} rpm, ten degrees late, costs 1.5 to 6 %`, () => {
        const loss = 1 - torqueAt(speed, found.spark - 10 * degree) / found.torque;
        expect(loss).toBeGreaterThan(0.015);
        expect(loss).toBeLessThan(0.06);
      });
    }
  }
});
