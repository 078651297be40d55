import type { CycleEngine } from '../../src/physics/cycle/engine.ts';
import type { EngineInput } from '../../src/physics/cycle/engine-input.ts';
import type { GridName } from '../../src/physics/cycle/grid.ts';
import type { RangeEffects } from '../../src/physics/cycle/band.ts';
import type { CycleRecord } from '../../src/physics/cycle/record.ts';
import type { CycleState, SpeedResult } from '../../src/physics/cycle/speed.ts';

/** The gas dynamics as its cells use it. */
export interface Cycle {
  readonly cycleEngine: (engine: EngineInput) => CycleEngine;
  readonly EngineRun: new (
    engine: CycleEngine,
    grid: GridName,
  ) => { at(speed: number, near?: CycleState | null): SpeedResult; state(): CycleState; record(): CycleRecord };
  readonly rangeEffects: (engine: EngineInput, speed: number) => Generator<number, RangeEffects, void>;
}
let brought: Cycle | undefined;

/** Only where it is worked out (in workers, without a page) is it loaded: `cycle.work.ts` brings it there. */
export function bring(cycle: Cycle): void {
  brought = cycle;
}
export function cycle(): Cycle {
  if (!brought) throw new Error('The gas dynamics is not loaded in this thread.');
  return brought;
}
