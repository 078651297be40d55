import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { type Clearance, smallestClearance } from '../../src/physics/valve/clearance.ts';
import { common } from '../../src/references.ts';
import { linkage } from '../block/linkage.ts';
import { intakeCenterlineInstalled } from '../cam/intake-centerline-installed.ts';
import { tappet } from '../cam/inputs.ts';
import { aboveOf } from './motion.ts';
import { crownAtValve, intakeLash, intakeValveAngle, rockerRatio } from './inputs.ts';
import { intakeLobe } from './intake-lobe.ts';
import { intakeRest } from './intake-rest.ts';

export const intakeNearest = cell({
  id: 'intakeNearest',
  label: 'Intake valve, nearest to the piston',
  note: 'Where the gap is least around the top of the exhaust stroke.',
  kind: structure<Clearance>(),
  from: { linkage, intakeLobe, intakeCenterlineInstalled, rockerRatio, tappet, intakeLash, intakeRest, crownAtValve, intakeValveAngle },
  source: common('plane geometry of piston and valve'),
  formula: 'the least of intakeRest + the piston’s depth × cos intakeValveAngle − lift',
  compute: (now) =>
    smallestClearance(
      aboveOf({
        side: 'intake',
        linkage: now.linkage,
        lobe: now.intakeLobe,
        centerline: now.intakeCenterlineInstalled,
        rocker: now.rockerRatio,
        tappet: now.tappet,
        lash: now.intakeLash,
        rest: now.intakeRest,
        crown: now.crownAtValve,
        valveAngle: now.intakeValveAngle,
      }),
    ),
});
