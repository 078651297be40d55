import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { profileLift } from '../../src/physics/valve/profile.ts';
import { valveLift } from '../../src/physics/valve/valve-lift.ts';
import { common } from '../../src/references.ts';
import { angle, gap } from '../../src/units/quantity.ts';
import { intakeCenterlineInstalled } from '../cam/intake-centerline-installed.ts';
import { tappet } from '../cam/inputs.ts';
import { crankAngles, lashOf, lobeOf } from './motion.ts';
import { intakeLash, rockerRatio } from './inputs.ts';
import { intakeLobe } from './intake-lobe.ts';

export const intakeLift = cell({
  id: 'intakeLift',
  label: 'Intake valve lift',
  note: 'Lobe lift times rocker ratio, less the lash of a solid; zero is firing top dead center.',
  kind: curve(angle, gap),
  from: { intakeLobe, intakeCenterlineInstalled, rockerRatio, tappet, intakeLash },
  mayLack: ['intakeLash'],
  source: common('a rigid valve train'),
  formula: 'rockerRatio × lobe lift − lash',
  compute: ({ intakeLobe, intakeCenterlineInstalled, rockerRatio, tappet, intakeLash }) => {
    const lobe = lobeOf(intakeLobe, 'intakeLobeLift');
    const peak = 2 * Math.PI + intakeCenterlineInstalled;
    const lash = lashOf(tappet, intakeLash);
    return { x: crankAngles, y: crankAngles.map((a) => valveLift(profileLift(lobe, a - peak), rockerRatio, lash)) };
  },
});
