import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { peakOf } from '../../src/numerics/peak.ts';
import { common } from '../../src/references.ts';
import { enginePower } from '../../src/units/quantity.ts';
import { peakPowerError } from './peak-power-error.ts';
import { powerCurve } from './power-curve.ts';

export const peakPower = cell({
  id: 'peakPower',
  label: 'Peak power',
  short: 'Peak power',
  note: 'The highest of the curve, between its points.',
  kind: scalar(enginePower),
  from: { powerCurve },
  source: common('a parabola through the highest point and its neighbors'),
  formula: 'the largest of powerCurve',
  modelError: peakPowerError,
  compute: ({ powerCurve }) => peakOf(powerCurve.x, powerCurve.y)!.y,
});
