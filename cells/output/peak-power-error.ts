import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import type { ModelError } from '../../src/graph/model-error.ts';
import { peakOf } from '../../src/numerics/peak.ts';
import { common } from '../../src/references.ts';
import { engineRanges } from './engine-ranges.ts';
import { timesSpeed, torqueErrorAt } from './model-shares.ts';
import { powerCurve } from './power-curve.ts';

export const peakPowerError = cell({
  id: 'peakPowerError',
  label: 'How sure the peak power is',
  note: 'The torque’s there, times speed.',
  kind: structure<ModelError>(),
  from: { engineRanges, powerCurve },
  source: common('ranges that about two engines in three lie inside'),
  formula: 'root of the sum of squares of engineRanges at the peak of powerCurve, times speed; at least 8 % of it',
  compute: ({ engineRanges, powerCurve }) => {
    const { x, y } = peakOf(powerCurve.x, powerCurve.y)!;
    return timesSpeed(torqueErrorAt(engineRanges, x, y / x), x);
  },
});
