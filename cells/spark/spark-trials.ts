import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { knockLimitedSpark } from '../../src/physics/cycle/spark-advice.ts';
import type { SparkTrial } from '../../src/physics/cycle/spark-trial.ts';
import { common } from '../../src/references.ts';
import { pumpOctane } from '../fuel/pump-octane.ts';
import { engineAtSpeed } from '../inside/engine-at-speed.ts';

interface Trials {
  readonly trials: readonly SparkTrial[];
  /** rad before top: what the engine runs, the best, and the most this fuel bears. */
  readonly spark: number;
  readonly best: number;
  readonly limit: number | null;
  /** The fuel’s. */
  readonly octane: number;
}

export const sparkTrials = cell({
  id: 'sparkTrials',
  label: 'The same charge with other sparks',
  note: 'Torque and octane requirement over spark advance at the engine speed.',
  kind: structure<Trials>(),
  from: { engineAtSpeed, pumpOctane },
  source: common('what was caught, burned again with one spark and another'),
  formula: 'sparks of engineAtSpeed; the limit is where they ask for pumpOctane',
  compute: ({ engineAtSpeed: { sparks, spark, bestSpark }, pumpOctane }) => ({
    trials: sparks,
    spark,
    best: bestSpark,
    limit: knockLimitedSpark(sparks, pumpOctane),
    octane: pumpOctane,
  }),
});
