import type { Given } from '../../src/graph/cell.ts';
import type { ValveAbovePiston } from '../../src/physics/valve/clearance.ts';
import { linkage } from '../block/linkage.ts';
import { intakeCenterlineInstalled } from '../cam/intake-centerline-installed.ts';
import { tappet } from '../cam/inputs.ts';
import { intakeLobe } from './intake-lobe.ts';
import { intakeRest } from './intake-rest.ts';
import { crownAtValve, intakeLash, intakeValveAngle, rockerRatio } from './inputs.ts';
import { aboveOf } from './motion.ts';

/** What every question about the intake valve's gap to the piston reads. */
export const intakeTrain = {
  linkage,
  intakeLobe,
  intakeCenterlineInstalled,
  rockerRatio,
  tappet,
  intakeLash,
  intakeRest,
  crownAtValve,
  intakeValveAngle,
};

/** The intake valve above its piston. */
export const intakeAbove = (now: Given<typeof intakeTrain, 'intakeLash'>): ValveAbovePiston =>
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
  });
