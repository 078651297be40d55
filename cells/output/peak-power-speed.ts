import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { peakOf } from '../../src/numerics/peak.ts';
import { common } from '../../src/references.ts';
import { rotation } from '../../src/units/quantity.ts';
import { powerCurve } from './power-curve.ts';

export const peakPowerSpeed = cell({
  id: 'peakPowerSpeed',
  label: 'Peak power at',
  short: 'Power at',
  note: 'Where the curve is highest; the model tends to read 300 to 500 rpm high here.',
  kind: scalar(rotation),
  from: { powerCurve },
  source: common('a parabola through the highest point and its neighbors'),
  formula: 'where powerCurve is largest',
  compute: ({ powerCurve }) => peakOf(powerCurve.x, powerCurve.y)!.x,
});
