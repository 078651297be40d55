import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { clearanceAt } from '../../src/physics/valve/clearance.ts';
import { common } from '../../src/references.ts';
import { angle, gap } from '../../src/units/quantity.ts';
import { linkage } from '../block/linkage.ts';
import { intakeCenterlineInstalled } from '../cam/intake-centerline-installed.ts';
import { tappet } from '../cam/inputs.ts';
import { aboveOf, nearAngles } from './motion.ts';
import { crownAtValve, intakeLash, intakeValveAngle, rockerRatio } from './inputs.ts';
import { intakeLobe } from './intake-lobe.ts';
import { intakeRest } from './intake-rest.ts';

export const intakeGap = cell({
  id: 'intakeGap',
  label: 'Intake valve to piston',
  note: 'The gap around the top of the exhaust stroke, degree by degree.',
  kind: curve(angle, gap),
  from: { linkage, intakeLobe, intakeCenterlineInstalled, rockerRatio, tappet, intakeLash, intakeRest, crownAtValve, intakeValveAngle },
  source: common('plane geometry of piston and valve'),
  formula: 'intakeRest + the piston’s depth × cos intakeValveAngle − lift',
  compute: (now) => {
    const above = aboveOf({
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
    });
    return { x: nearAngles, y: nearAngles.map((a) => clearanceAt(above, a)) };
  },
});
