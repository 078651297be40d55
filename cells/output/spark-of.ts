import type { Rows } from '../../src/graph/kind.ts';
import { Impossible, needed } from '../../src/graph/state.ts';
import { type HeldSpark, type SparkPoint, sparkCurveOf } from '../../src/physics/cycle/spark.ts';

interface Said {
  readonly sparkEntry: string;
  readonly totalSpark: number | undefined;
  readonly sparkAdvance: Rows | undefined;
  readonly pumpOctane: number | undefined;
}

/** The spark as the cycle asks for it: the best at each speed, all or as the fuel bears it, a curve, or a table's rows. */
export function sparkOf(said: Said): 'best' | HeldSpark | readonly SparkPoint[] {
  const { sparkEntry, totalSpark, sparkAdvance, pumpOctane } = said;
  if (sparkEntry === 'best') return 'best';
  if (sparkEntry === 'fuel') return { heldTo: needed(pumpOctane) };
  if (sparkEntry === 'total') return sparkCurveOf(needed(totalSpark));
  const rows = needed(sparkAdvance);
  if (rows.length === 0) throw new Impossible(['Paste the spark table: engine speed and advance.'], 'sparkAdvance');
  for (let i = 1; i < rows.length; i++)
    if (rows[i]![0]! <= rows[i - 1]![0]!)
      throw new Impossible([`Row ${i + 1} of the spark table is not faster than the row before it.`], 'sparkAdvance');
  return rows.map(([speed, advance]) => ({ speed: speed!, advance: advance! }));
}
