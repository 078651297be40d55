import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { profileDuration } from '../../src/physics/valve/profile.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { lobeOf } from './motion.ts';
import { readAtLift } from './inputs.ts';
import { intakeLobe } from './intake-lobe.ts';

export const intakeDurationAtLift = cell({
  id: 'intakeDurationAtLift',
  label: 'Intake duration at that lift',
  note: 'Crank degrees above the tappet lift chosen for reading.',
  kind: scalar(angle),
  from: { intakeLobe, readAtLift },
  source: common('the fitted lobe'),
  formula: 'the crank angle between both crossings of readAtLift',
  compute: ({ intakeLobe, readAtLift }) => profileDuration(lobeOf(intakeLobe, 'intakeLobeLift'), readAtLift),
});
