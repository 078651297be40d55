import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { profileArea } from '../../src/physics/valve/profile.ts';
import { common } from '../../src/references.ts';
import { liftArea } from '../../src/units/quantity.ts';
import { lobeOf } from './motion.ts';
import { rockerRatio } from './inputs.ts';
import { intakeLobe } from './intake-lobe.ts';

export const intakeLiftArea = cell({
  id: 'intakeLiftArea',
  label: 'Intake lift area',
  note: 'Lift times crank degrees, all under the curve: more area, more room to breathe.',
  kind: scalar(liftArea),
  from: { intakeLobe, rockerRatio },
  source: common('the area under the lift curve; a solid’s lash is left out'),
  formula: 'rockerRatio × the area under the lobe’s lift',
  compute: ({ intakeLobe, rockerRatio }) => rockerRatio * profileArea(lobeOf(intakeLobe, 'intakeLobeLift')),
});
