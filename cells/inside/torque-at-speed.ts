import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { engineTorque } from '../../src/units/quantity.ts';
import { engineAtSpeed } from './engine-at-speed.ts';
import { torqueAtSpeedError } from './torque-at-speed-error.ts';

export const torqueAtSpeed = cell({
  id: 'torqueAtSpeed',
  label: 'Torque at the engine speed',
  short: 'Torque here',
  note: 'At the speed set in the short block’s chapter.',
  kind: scalar(engineTorque),
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'torque of engineAtSpeed',
  modelError: torqueAtSpeedError,
  compute: ({ engineAtSpeed }) => engineAtSpeed.torque,
});
