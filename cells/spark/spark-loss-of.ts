import { torqueWith } from '../../src/physics/cycle/spark-advice.ts';
import type { SpeedRow } from '../output/rows.ts';

/** Share of the torque at the best spark that the spark an engine runs gives away; null where there is no torque to lose. */
export function sparkLossOf({ sparks, spark, bestSpark }: SpeedRow): number | null {
  const best = torqueWith(sparks, bestSpark);
  return best > 0 ? Math.max(0, 1 - torqueWith(sparks, spark) / best) : null;
}
