import { slow } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import type { EngineInput } from '../../src/physics/cycle/engine-input.ts';
import { sparkAt } from '../../src/physics/cycle/spark.ts';
import { common } from '../../src/references.ts';
import { intakeClosing } from '../cam/intake-closing.ts';
import { cycleInput } from '../output/cycle-input.ts';
import { cycle } from '../output/cycle.ts';
import { chamberStyle } from '../output/inputs.ts';
import { octaneWorstSpeed } from '../spark/octane-worst-speed.ts';
import { type DriverName, ordinaryEngines, usualCurve } from './ordinary-engine.ts';

export interface OctaneDrivers {
  /** At the worst speed, quickly worked out, as are the others. */
  readonly requirement: number;
  /** The spark there, and that of the usual curve, rad before top. */
  readonly spark: number;
  readonly usualSpark: number;
  /** The same with one thing as it usually is; what is as usual is left out. */
  readonly ordinary: readonly { readonly name: DriverName; readonly requirement: number }[];
}

const at = (engine: EngineInput, speed: number): { readonly octaneRequirement: number; readonly spark: number } => {
  const { cycleEngine, EngineRun } = cycle();
  return new EngineRun(cycleEngine(engine), 'coarse').at(speed);
};

export const octaneDrivers = slow({
  id: 'octaneDrivers',
  label: 'Where the octane requirement comes from',
  note: 'The requirement again at its worst speed, with one thing at a time as it usually is.',
  kind: structure<OctaneDrivers>(),
  from: { cycleInput, octaneWorstSpeed, chamberStyle, intakeClosing },
  source: common(
    '34° of spark (28° with a pent roof), 25 °C, 101.3 kPa, 1.15 of fuel, 7 g/kg, open exhaust, closing at 60°',
  ),
  formula:
    'octane requirement at octaneWorstSpeed of cycleInput with ordinary spark (by chamberStyle), air, mixture, exhaust or intakeClosing',
  idle: true,
  *steps({ cycleInput, octaneWorstSpeed, chamberStyle, intakeClosing }) {
    const isPentRoof = chamberStyle === 'pentroof';
    const others = ordinaryEngines(cycleInput, { isPentRoof, closing: intakeClosing });
    const { octaneRequirement: requirement, spark } = at(cycleInput, octaneWorstSpeed);
    const ordinary: { name: DriverName; requirement: number }[] = [];
    for (const [i, [name, engine]] of others.entries()) {
      yield (i + 1) / (others.length + 1);
      try {
        ordinary.push({ name, requirement: at(engine, octaneWorstSpeed).octaneRequirement });
      } catch {
        // A cam turned so far may leave a valve open at the top: then it has nothing to say.
      }
    }
    return { requirement, spark, usualSpark: sparkAt(usualCurve(isPentRoof), octaneWorstSpeed), ordinary };
  },
});
