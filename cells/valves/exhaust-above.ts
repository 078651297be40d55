import type { Given } from '../../src/graph/cell.ts';
import type { ValveAbovePiston } from '../../src/physics/valve/clearance.ts';
import { linkage } from '../block/linkage.ts';
import { exhaustCenterline } from '../cam/exhaust-centerline.ts';
import { tappet } from '../cam/inputs.ts';
import { exhaustLobe } from './exhaust-lobe.ts';
import { exhaustRest } from './exhaust-rest.ts';
import { crownAtValve, exhaustLash, exhaustValveAngle, rockerRatio } from './inputs.ts';
import { aboveOf } from './motion.ts';

/** What every question about the exhaust valve's gap to the piston reads. */
export const exhaustTrain = {
  linkage,
  exhaustLobe,
  exhaustCenterline,
  rockerRatio,
  tappet,
  exhaustLash,
  exhaustRest,
  crownAtValve,
  exhaustValveAngle,
};

/** The exhaust valve above its piston. */
export const exhaustAbove = (now: Given<typeof exhaustTrain, 'exhaustLash'>): ValveAbovePiston =>
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
  });
