import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { clearanceAt } from '../../src/physics/valve/clearance.ts';
import { common } from '../../src/references.ts';
import { angle, gap } from '../../src/units/quantity.ts';
import { linkage } from '../block/linkage.ts';
import { exhaustCenterline } from '../cam/exhaust-centerline.ts';
import { tappet } from '../cam/inputs.ts';
import { aboveOf, nearAngles } from './motion.ts';
import { crownAtValve, exhaustLash, exhaustValveAngle, rockerRatio } from './inputs.ts';
import { exhaustLobe } from './exhaust-lobe.ts';
import { exhaustRest } from './exhaust-rest.ts';

export const exhaustGap = cell({
  id: 'exhaustGap',
  label: 'Exhaust valve to piston',
  note: 'The gap around the top of the exhaust stroke, degree by degree.',
  kind: curve(angle, gap),
  from: { linkage, exhaustLobe, exhaustCenterline, rockerRatio, tappet, exhaustLash, exhaustRest, crownAtValve, exhaustValveAngle },
  source: common('plane geometry of piston and valve'),
  formula: 'exhaustRest + the piston’s depth × cos exhaustValveAngle − lift',
  compute: (now) => {
    const above = aboveOf({
      side: 'exhaust',
      linkage: now.linkage,
      lobe: now.exhaustLobe,
      centerline: now.exhaustCenterline,
      rocker: now.rockerRatio,
      tappet: now.tappet,
      lash: now.exhaustLash,
      rest: now.exhaustRest,
      crown: now.crownAtValve,
      valveAngle: now.exhaustValveAngle,
    });
    return { x: nearAngles, y: nearAngles.map((a) => clearanceAt(above, a)) };
  },
});
