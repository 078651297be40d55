import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import type { ModelError } from '../../src/graph/model-error.ts';
import { common } from '../../src/references.ts';
import { engineSpeed } from '../block/inputs.ts';
import { engineRanges } from '../output/engine-ranges.ts';
import { torqueErrorAt } from '../output/model-shares.ts';
import { engineAtSpeed } from './engine-at-speed.ts';

export const torqueAtSpeedError = cell({
  id: 'torqueAtSpeedError',
  label: 'How sure the torque at the engine speed is',
  note: 'From what nobody knows of a single engine; never surer than single engines scatter.',
  kind: structure<ModelError>(),
  from: { engineRanges, engineAtSpeed, engineSpeed },
  source: common('ranges that about two engines in three lie inside'),
  formula:
    'root of the sum of squares of engineRanges at engineSpeed; at least 8 % of engineAtSpeed, 12 % under 2000 rpm',
  compute: ({ engineRanges, engineAtSpeed, engineSpeed }) =>
    torqueErrorAt(engineRanges, engineSpeed, engineAtSpeed.torque),
});
