import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { knockLimitedSpark } from '../../src/physics/cycle/spark-advice.ts';
import { cite, heywood } from '../../src/references.ts';
import { angle, rotation } from '../../src/units/quantity.ts';
import { pumpOctane } from '../fuel/pump-octane.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { columnOf } from '../output/rows.ts';

export const knockLimitedSparkCurve = cell({
  id: 'knockLimitedSparkCurve',
  label: 'Most spark this fuel bears, by engine speed',
  note: 'Where knock is just due; left out where this fuel bears no spark that was tried.',
  kind: curve(rotation, angle, 'Engine speed'),
  from: { engineBySpeed, pumpOctane },
  source: cite(heywood, 'eq. 9.58 (from memory), over sparks from 30 degrees under the best to 8 over it'),
  formula: 'the spark of engineBySpeed at which the octane requirement comes to pumpOctane',
  compute: ({ engineBySpeed, pumpOctane }) =>
    columnOf(engineBySpeed, (row) => knockLimitedSpark(row.sparks, pumpOctane)),
});
