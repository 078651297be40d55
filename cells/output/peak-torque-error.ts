import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import type { ModelError } from '../../src/graph/model-error.ts';
import { peakOf } from '../../src/numerics/peak.ts';
import { common } from '../../src/references.ts';
import { engineRanges } from './engine-ranges.ts';
import { torqueErrorAt } from './model-shares.ts';
import { torqueCurve } from './torque-curve.ts';

export const peakTorqueError = cell({
  id: 'peakTorqueError',
  label: 'How sure the peak torque is',
  note: 'From what nobody knows of a single engine; never surer than single engines scatter.',
  kind: structure<ModelError>(),
  from: { engineRanges, torqueCurve },
  source: common('ranges that about two engines in three lie inside'),
  formula:
    'root of the sum of squares of engineRanges at the peak of torqueCurve; at least 8 % of it, 12 % under 2000 rpm',
  compute: ({ engineRanges, torqueCurve }) => {
    const { x, y } = peakOf(torqueCurve.x, torqueCurve.y)!;
    return torqueErrorAt(engineRanges, x, y);
  },
});
