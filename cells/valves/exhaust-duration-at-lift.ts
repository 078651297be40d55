import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { profileDuration } from '../../src/physics/valve/profile.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { lobeOf } from './motion.ts';
import { readAtLift } from './inputs.ts';
import { exhaustLobe } from './exhaust-lobe.ts';

export const exhaustDurationAtLift = cell({
  id: 'exhaustDurationAtLift',
  label: 'Exhaust duration at that lift',
  note: 'Crank degrees above the tappet lift chosen for reading.',
  kind: scalar(angle),
  from: { exhaustLobe, readAtLift },
  source: common('the fitted lobe'),
  formula: 'the crank angle between both crossings of readAtLift',
  compute: ({ exhaustLobe, readAtLift }) => profileDuration(lobeOf(exhaustLobe, 'exhaustLobeLift'), readAtLift),
});
