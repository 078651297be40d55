import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { enginePower, engineTorque, rotation } from '../../src/units/quantity.ts';
import { peakPowerSpeed } from './peak-power-speed.ts';
import { peakPower } from './peak-power.ts';
import { peakTorqueSpeed } from './peak-torque-speed.ts';
import { peakTorque } from './peak-torque.ts';

export const outputSays = cell({
  id: 'outputSays',
  label: 'Torque and power, in one line',
  note: 'What the chapter comes to, for when it is closed.',
  kind: remark,
  from: { peakTorque, peakTorqueSpeed, peakPower, peakPowerSpeed },
  source: common('a summary'),
  formula: 'peakTorque at peakTorqueSpeed, peakPower at peakPowerSpeed',
  compute: (now) =>
    phrase`About ${value(now.peakTorque, engineTorque)} at ${value(now.peakTorqueSpeed, rotation)} and ${value(now.peakPower, enginePower)} at ${value(now.peakPowerSpeed, rotation)}.`,
});
