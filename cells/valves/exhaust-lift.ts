import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { profileLift } from '../../src/physics/valve/profile.ts';
import { valveLift } from '../../src/physics/valve/valve-lift.ts';
import { common } from '../../src/references.ts';
import { angle, gap } from '../../src/units/quantity.ts';
import { exhaustCenterline } from '../cam/exhaust-centerline.ts';
import { tappet } from '../cam/inputs.ts';
import { crankAngles, lashOf, lobeOf } from './motion.ts';
import { exhaustLash, rockerRatio } from './inputs.ts';
import { exhaustLobe } from './exhaust-lobe.ts';

export const exhaustLift = cell({
  id: 'exhaustLift',
  label: 'Exhaust valve lift',
  note: 'Lobe lift times rocker ratio, less the lash of a solid; zero is firing top dead center.',
  kind: curve(angle, gap),
  from: { exhaustLobe, exhaustCenterline, rockerRatio, tappet, exhaustLash },
  mayLack: ['exhaustLash'],
  source: common('a rigid valve train'),
  formula: 'rockerRatio × lobe lift − lash',
  compute: ({ exhaustLobe, exhaustCenterline, rockerRatio, tappet, exhaustLash }) => {
    const lobe = lobeOf(exhaustLobe, 'exhaustLobeLift');
    const peak = 2 * Math.PI - exhaustCenterline;
    const lash = lashOf(tappet, exhaustLash);
    return { x: crankAngles, y: crankAngles.map((a) => valveLift(profileLift(lobe, a - peak), rockerRatio, lash)) };
  },
});
