import { cell } from '../../src/graph/cell.ts';
import { type Rows, structure } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { suggestedSpark as suggested } from '../../src/physics/cycle/spark-advice.ts';
import { common } from '../../src/references.ts';
import { degree, si, tidy } from '../../src/units/unit.ts';
import { pumpOctane } from '../fuel/pump-octane.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { soundRows } from '../output/rows.ts';

interface Suggestion {
  /** rad/s and rad before top */
  readonly rows: Rows;
  /** Speeds at which this fuel bears no spark that was tried, rad/s. */
  readonly without: readonly number[];
}

export const suggestedSpark = cell({
  id: 'suggestedSpark',
  label: 'Suggested spark table',
  note: 'Whole degrees, rounded down: never over the best, nor over what this fuel bears at the speeds of the curve.',
  kind: structure<Suggestion>(),
  from: { engineBySpeed, pumpOctane },
  source: common('the lesser of two'),
  formula: 'the lesser of best spark and knock limit of engineBySpeed on pumpOctane, to whole degrees',
  compute: ({ engineBySpeed, pumpOctane }): Suggestion => {
    const settled = soundRows(engineBySpeed).filter((row) => row.settled);
    if (settled.length === 0) throw new Impossible(['At no speed of the curve does the cycle settle.']);
    // A first look is near, but a table is kept.
    if (!settled.every((row) => row.fine)) throw new Impossible(['The curve is not finished yet.']);
    const found = settled.map((row) => ({
      speed: tidy(row.speed),
      spark: suggested(row.sparks, row.bestSpark, pumpOctane),
    }));
    return {
      rows: found.flatMap(({ speed, spark }) => (spark === null ? [] : [[speed, wholeDegrees(spark)]])),
      without: found.flatMap(({ speed, spark }) => (spark === null ? [speed] : [])),
    };
  },
});

const wholeDegrees = (spark: number): number => si(Math.floor(spark / degree.factor + 1e-6), degree);
