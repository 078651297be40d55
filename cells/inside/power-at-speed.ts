import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { enginePower } from '../../src/units/quantity.ts';
import { engineAtSpeed } from './engine-at-speed.ts';
import { powerAtSpeedError } from './power-at-speed-error.ts';

export const powerAtSpeed = cell({
  id: 'powerAtSpeed',
  label: 'Power at the engine speed',
  short: 'Power here',
  note: 'Torque times speed.',
  kind: scalar(enginePower),
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'power of engineAtSpeed',
  modelError: powerAtSpeedError,
  compute: ({ engineAtSpeed }) => engineAtSpeed.power,
});
