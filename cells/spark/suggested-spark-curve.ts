import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { suggestedSpark as suggested } from '../../src/physics/cycle/spark-advice.ts';
import { common } from '../../src/references.ts';
import { angle, rotation } from '../../src/units/quantity.ts';
import { pumpOctane } from '../fuel/pump-octane.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { columnOf } from '../output/rows.ts';

export const suggestedSparkCurve = cell({
  id: 'suggestedSparkCurve',
  label: 'Suggested spark by engine speed',
  note: 'The best, or what the fuel bears if that is less.',
  kind: curve(rotation, angle, 'Engine speed'),
  from: { engineBySpeed, pumpOctane },
  source: common('the lesser of two'),
  formula: 'the lesser of best spark and knock limit of engineBySpeed on pumpOctane',
  compute: ({ engineBySpeed, pumpOctane }) =>
    columnOf(engineBySpeed, (row) => suggested(row.sparks, row.bestSpark, pumpOctane)),
});
