import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { type Clearance, smallestClearance } from '../../src/physics/valve/clearance.ts';
import { common } from '../../src/references.ts';
import { linkage } from '../block/linkage.ts';
import { exhaustCenterline } from '../cam/exhaust-centerline.ts';
import { tappet } from '../cam/inputs.ts';
import { aboveOf } from './motion.ts';
import { crownAtValve, exhaustLash, exhaustValveAngle, rockerRatio } from './inputs.ts';
import { exhaustLobe } from './exhaust-lobe.ts';
import { exhaustRest } from './exhaust-rest.ts';

export const exhaustNearest = cell({
  id: 'exhaustNearest',
  label: 'Exhaust valve, nearest to the piston',
  note: 'Where the gap is least around the top of the exhaust stroke.',
  kind: structure<Clearance>(),
  from: { linkage, exhaustLobe, exhaustCenterline, rockerRatio, tappet, exhaustLash, exhaustRest, crownAtValve, exhaustValveAngle },
  source: common('plane geometry of piston and valve'),
  formula: 'the least of exhaustRest + the piston’s depth × cos exhaustValveAngle − lift',
  compute: (now) =>
    smallestClearance(
      aboveOf({
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
      }),
    ),
});
