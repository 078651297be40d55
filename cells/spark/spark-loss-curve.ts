import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { rotation, share } from '../../src/units/quantity.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { columnOf } from '../output/rows.ts';
import { sparkLossOf } from './spark-loss-of.ts';

export const sparkLossCurve = cell({
  id: 'sparkLossCurve',
  label: 'Torque lost to the spark, by engine speed',
  note: 'What the spark the engine runs costs against the best one, as a share of the best one’s torque.',
  kind: curve(rotation, share, 'Engine speed'),
  from: { engineBySpeed },
  source: common('the same charge burned with other sparks'),
  formula: '1 − torque / torque at the best spark, both of engineBySpeed',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, sparkLossOf),
});
