import type { RangeEffects } from './band.ts';
import { cycleEngine } from './engine.ts';
import type { EngineInput } from './engine-input.ts';
import { frictionTorque } from './friction.ts';
import { statedRanges } from './ranges.ts';
import { EngineRun } from './speed.ts';

/**
 * What the ends of the stated ranges do to an engine's torque at a speed, on the coarse grid, each from the state of the
 * engine as it is. A table of spark goes along with the burning time alone; what is asked to be the best is found anew each
 * time.
 *
 * @param engine as it is
 * @param speed rad/s
 * @returns the effects, not numbers where the cycles of an end do not settle; yields the share that is done
 * @throws RangeError with a sentence, where a figure makes no sense
 */
export function* rangeEffects(engine: EngineInput, speed: number): Generator<number, RangeEffects> {
  const ready = cycleEngine(engine);
  const usual = new EngineRun(ready, 'coarse');
  usual.torqueAt(speed);
  const near = usual.state();
  const torque = usual.torqueAt(speed, near); // as the ends are found: what a settling leaves open is left open in all
  const ends: [number[], number[]] = [[], []];
  const runs = 1 + 2 * statedRanges.length;
  let done = 1;
  yield done / runs;
  for (const range of statedRanges)
    for (const [side, steps] of [-1, 1].entries()) {
      const changed = cycleEngine(range.with(engine, steps));
      ends[side]!.push(
        range.id === 'friction'
          ? frictionTorque(ready, speed) - frictionTorque(changed, speed)
          : isIdle(range.id, steps, engine)
            ? 0
            : new EngineRun(changed, 'coarse').torqueAt(speed, near) - torque,
      );
      yield ++done / runs;
    }
  return { speed, torque, atLow: ends[0], atHigh: ends[1] };
}

/** Whether an end is the engine as it is. */
function isIdle(id: string, steps: number, engine: EngineInput): boolean {
  return id === 'bank' && (steps < 0 || engine.crankLayout === 'even' || engine.bankBlend === 1);
}
