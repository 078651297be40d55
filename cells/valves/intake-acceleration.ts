import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { profileAcceleration } from '../../src/physics/valve/profile.ts';
import { common } from '../../src/references.ts';
import { angle, perRadianSquared } from '../../src/units/quantity.ts';
import { lobeAngles, lobeOf } from './motion.ts';
import { rockerRatio } from './inputs.ts';
import { intakeLobe } from './intake-lobe.ts';

export const intakeAcceleration = cell({
  id: 'intakeAcceleration',
  label: 'Intake valve acceleration',
  note: 'The push up on the flanks, and the slowing over the nose that the spring has to supply.',
  kind: curve(angle, perRadianSquared),
  from: { intakeLobe, rockerRatio },
  source: common('the lift curve’s curvature'),
  formula: 'rockerRatio × the curvature of the lobe’s lift',
  compute: ({ intakeLobe, rockerRatio }) => {
    const lobe = lobeOf(intakeLobe, 'intakeLobeLift');
    return { x: lobeAngles, y: lobeAngles.map((a) => rockerRatio * profileAcceleration(lobe, a)) };
  },
});
