import { slowInParts } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import type { GridName } from '../../src/physics/cycle/grid.ts';
import type { CycleState } from '../../src/physics/cycle/speed.ts';
import { cite, heywood } from '../../src/references.ts';
import { cycleInput } from './cycle-input.ts';
import { cycle } from './cycle.ts';
import { curveFrom, curveStep, curveTo } from './inputs.ts';
import { type BySpeed, rowOf, speedsOf, type SpeedRow } from './rows.ts';

interface Part {
  readonly speed: number;
  readonly grid: GridName;
}
/** What this thread found last at a speed: the quick first look starts from there. Nothing that stays on show does. */
const last = new Map<number, CycleState>();
const kept = 60;

export const engineBySpeed = slowInParts({
  id: 'engineBySpeed',
  label: 'The engine, speed by speed',
  note: 'Gas dynamics through runner, cylinder, primary and collector, until each cycle repeats the one before.',
  kind: structure<BySpeed>(),
  from: { cycleInput, curveFrom, curveTo, curveStep },
  source: cite(heywood, 'ch. 14; the solver after Toro, Riemann Solvers and Numerical Methods, 2009'),
  formula: 'one cylinder by crank angle at each speed from curveFrom to curveTo by curveStep',
  parts: {
    list: ({ curveFrom, curveTo, curveStep }): readonly Part[] => {
      const speeds = speedsOf(curveFrom, curveTo, curveStep);
      return (['coarse', 'medium'] as const).flatMap((grid) => speeds.map((speed) => ({ speed, grid })));
    },
    first: ({ curveFrom, curveTo, curveStep }) => speedsOf(curveFrom, curveTo, curveStep).length,
    *one({ cycleInput }, { speed, grid }): Generator<number, SpeedRow, void> {
      const { cycleEngine, EngineRun } = cycle();
      const run = new EngineRun(cycleEngine(cycleInput), grid);
      yield 0;
      if (grid !== 'coarse') return rowOf(run.at(speed));
      const found = run.at(speed, last.get(speed) ?? null);
      if (found.settled) last.set(speed, run.state());
      if (last.size > kept) last.delete(last.keys().next().value!);
      return rowOf(found);
    },
    join: (_, results: readonly (SpeedRow | undefined)[]): BySpeed | undefined => {
      const half = results.length / 2;
      const rows = results.slice(0, half).map((coarse, i) => results[half + i] ?? coarse);
      return rows.every((row) => row !== undefined) ? { rows } : undefined;
    },
  },
  // Each speed from the one before, the first from rest: the same whatever was computed before.
  rough: ({ cycleInput, curveFrom, curveTo, curveStep }) => {
    const { cycleEngine, EngineRun } = cycle();
    const run = new EngineRun(cycleEngine(cycleInput), 'coarse');
    let near: CycleState | null = null;
    const rows = speedsOf(curveFrom, curveTo, curveStep).map((speed) => {
      const found = run.at(speed, near);
      near = found.settled ? run.state() : null;
      return rowOf(found);
    });
    return { rows };
  },
});
