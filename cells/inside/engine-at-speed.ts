import { slow } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import type { GridName } from '../../src/physics/cycle/grid.ts';
import type { EngineInput } from '../../src/physics/cycle/engine-input.ts';
import type { CycleRecord } from '../../src/physics/cycle/record.ts';
import { cite, heywood } from '../../src/references.ts';
import { engineSpeed } from '../block/inputs.ts';
import { cycleInput } from '../output/cycle-input.ts';
import { cycle } from '../output/cycle.ts';
import { rowOf, type SpeedRow } from '../output/rows.ts';

export interface AtSpeed extends SpeedRow {
  readonly indicatedPressure: number;
  readonly peakPressure: number;
  /** One cycle by crank degree from bottom before firing: m3, Pa absolute. */
  readonly loop: { readonly volume: readonly number[]; readonly pressure: readonly number[] };
  /** What went through pipes and valves; not of a first look. */
  readonly record: CycleRecord | null;
}

function at(engine: EngineInput, speed: number, grid: GridName): AtSpeed {
  const { cycleEngine, EngineRun } = cycle();
  const run = new EngineRun(cycleEngine(engine), grid);
  const found = run.at(speed);
  const { indicatedPressure, peakPressure, loop } = found;
  return {
    ...rowOf(found),
    indicatedPressure,
    peakPressure,
    loop: { volume: [...loop.volume], pressure: [...loop.pressure] },
    record: grid === 'coarse' ? null : run.record(),
  };
}

export const engineAtSpeed = slow({
  id: 'engineAtSpeed',
  label: 'The engine at its speed',
  note: 'The same gas dynamics at the one speed of the short block’s chapter, with pressure and volume by crank degree.',
  // Another run is another value: so many figures are not worth comparing.
  kind: { ...structure<AtSpeed>(), same: Object.is },
  from: { cycleInput, engineSpeed },
  source: cite(heywood, 'ch. 14'),
  formula: 'one cylinder by crank angle at engineSpeed',
  *steps({ cycleInput, engineSpeed }) {
    yield { value: at(cycleInput, engineSpeed, 'coarse'), done: 0.3 };
    return at(cycleInput, engineSpeed, 'medium');
  },
  rough: ({ cycleInput, engineSpeed }) => at(cycleInput, engineSpeed, 'coarse'),
});
