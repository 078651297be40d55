import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { peakOf } from '../../src/numerics/peak.ts';
import { common } from '../../src/references.ts';
import { rotation } from '../../src/units/quantity.ts';
import { torqueCurve } from './torque-curve.ts';

export const peakTorqueSpeed = cell({
  id: 'peakTorqueSpeed',
  label: 'Peak torque at',
  short: 'Torque at',
  note: 'Where the curve is highest.',
  kind: scalar(rotation),
  from: { torqueCurve },
  source: common('a parabola through the highest point and its neighbors'),
  formula: 'where torqueCurve is largest',
  compute: ({ torqueCurve }) => peakOf(torqueCurve.x, torqueCurve.y)!.x,
});
