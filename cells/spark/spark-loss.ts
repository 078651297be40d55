import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { share } from '../../src/units/quantity.ts';
import { sparkLossCurve } from './spark-loss-curve.ts';

export const sparkLoss = cell({
  id: 'sparkLoss',
  label: 'Torque lost to the spark at most',
  short: 'Spark costs',
  note: 'Against the best spark, at the speed where it costs most.',
  kind: scalar(share),
  from: { sparkLossCurve },
  source: common('read off the curve'),
  formula: 'the largest of sparkLossCurve',
  compute: ({ sparkLossCurve }) => Math.max(0, ...sparkLossCurve.y),
});
