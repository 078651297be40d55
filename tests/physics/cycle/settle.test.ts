import { describe, expect, it } from 'vitest';
import { readState, stateSize, writeState } from '../../../src/physics/cycle/cycle-state.ts';
import { EngineCycle } from '../../../src/physics/cycle/cycle.ts';
import { cycleEngine } from '../../../src/physics/cycle/engine.ts';
import { rubbingFriction } from '../../../src/physics/cycle/friction.ts';
import { grids } from '../../../src/physics/cycle/grid.ts';
import { Settler } from '../../../src/physics/cycle/settle.ts';
import { built, lateEight, milledFour, mountainSix, rpm, streetEight } from './street-engines.ts';

const builds = { streetEight, lateEight, mountainSix, milledFour };

/** The state is averaged with what becomes of it, 70 times: no mixing, no rule when to stop. */
function walked(cycle: EngineCycle, speed: number): void {
  const state = new Float64Array(stateSize(cycle));
  const result = new Float64Array(stateSize(cycle));
  cycle.reset();
  writeState(cycle, state);
  for (let i = 0; i < 70; i++) {
    cycle.turn(speed);
    writeState(cycle, result);
    for (let k = 0; k < state.length; k++) state[k] = 0.5 * (state[k]! + result[k]!);
    readState(cycle, state);
  }
}

describe('settling from rest and from two foreign speeds ends within 0.6 % of the torque after 70 cycles', () => {
  for (const [name, build] of Object.entries(builds))
    it(`of the ${name}`, () => {
      const engine = cycleEngine({ ...built(build), spark: 'best' });
      const cycle = new EngineCycle(engine, grids.coarse);
      const settler = new Settler(cycle);
      for (const speed of [1000, 4000].map((n) => n * rpm)) {
        const brake = (): number => cycle.chamber.work / engine.swept - rubbingFriction(engine, speed);
        walked(cycle, speed);
        const expected = brake();
        for (const from of [0, 2000, 5500]) {
          cycle.reset();
          if (from > 0) for (let i = 0; i < 6; i++) cycle.turn(from * rpm);
          const { settled, cycles } = settler.settle(speed, from > 0);
          expect(settled).toBe(true);
          expect(cycles).toBeLessThan(40);
          expect(Math.abs(brake() / expected - 1), `${speed / rpm} from ${from}`).toBeLessThan(0.006);
          const { massIn, massOut, trappedMass } = cycle.chamber;
          expect(Math.abs(massIn - massOut) / trappedMass).toBeLessThan(3e-3);
        }
      }
    });
});
