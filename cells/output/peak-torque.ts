import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { peakOf } from '../../src/numerics/peak.ts';
import { common } from '../../src/references.ts';
import { engineTorque } from '../../src/units/quantity.ts';
import { peakTorqueError } from './peak-torque-error.ts';
import { torqueCurve } from './torque-curve.ts';

export const peakTorque = cell({
  id: 'peakTorque',
  label: 'Peak torque',
  short: 'Peak torque',
  note: 'The highest of the curve, between its points.',
  kind: scalar(engineTorque),
  from: { torqueCurve },
  source: common('a parabola through the highest point and its neighbors'),
  formula: 'the largest of torqueCurve',
  modelError: peakTorqueError,
  compute: ({ torqueCurve }) => peakOf(torqueCurve.x, torqueCurve.y)!.y,
});
