import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { engineTorque, rotation, share } from '../../src/units/quantity.ts';
import { engineSpeed } from '../block/inputs.ts';
import { residualAtSpeed } from './residual-at-speed.ts';
import { torqueAtSpeed } from './torque-at-speed.ts';
import { volumetricEfficiencyAtSpeed } from './volumetric-efficiency-at-speed.ts';

export const insideSays = cell({
  id: 'insideSays',
  label: 'Inside one cycle, in one line',
  note: 'What the chapter comes to, for when it is closed.',
  kind: remark,
  from: { engineSpeed, volumetricEfficiencyAtSpeed, residualAtSpeed, torqueAtSpeed },
  source: common('a summary'),
  formula: 'volumetricEfficiencyAtSpeed, residualAtSpeed and torqueAtSpeed at engineSpeed',
  compute: (now) =>
    phrase`At ${value(now.engineSpeed, rotation)} the cylinder is ${value(now.volumetricEfficiencyAtSpeed, share)} full, ${value(now.residualAtSpeed, share)} of its charge is burnt gas, and the engine gives ${value(now.torqueAtSpeed, engineTorque)}.`,
});
