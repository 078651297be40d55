import { Impossible, needed } from '../../src/graph/state.ts';
import type { Linkage } from '../../src/physics/linkage.ts';
import type { CrownAtValve, ValveAbovePiston } from '../../src/physics/valve/clearance.ts';
import { type Profile, profileLift } from '../../src/physics/valve/profile.ts';
import { valveLift } from '../../src/physics/valve/valve-lift.ts';
import type { NoLobe } from './measured-lobe.ts';

const degree = Math.PI / 180;
const every = (from: number, to: number, by: number): Float64Array =>
  Float64Array.from({ length: Math.round((to - from) / by) + 1 }, (_, i) => (from + i * by) * degree);

/** The gas exchange, by two degrees; zero is firing top dead center. */
export const crankAngles = every(60, 660, 2);
/** Around the top of the exhaust stroke, by degree; zero is there. */
export const nearAngles = every(-60, 60, 1);
/** Either side of a lobe's peak, by crank degree. */
export const lobeAngles = every(-180, 180, 1);

/** The lobe, or a refusal at its field. */
export function lobeOf(lobe: Profile | NoLobe | null, field: string): Profile {
  if (lobe === null)
    throw new Impossible(['No smooth lobe answers this card: look at the two figures named at its lift.'], field);
  if ('because' in lobe) throw new Impossible([lobe.because], lobe.about);
  return lobe;
}
/** Only a solid tappet has lash to take up: what is left in a hydraulic's hidden field counts for nothing. */
export const lashOf = (tappet: string, lash: number | undefined): number => (tappet === 'solid' ? needed(lash) : 0);

interface Train {
  readonly side: 'intake' | 'exhaust';
  readonly linkage: Linkage;
  readonly lobe: Profile | NoLobe | null;
  readonly centerline: number;
  readonly rocker: number;
  readonly tappet: string;
  readonly lash: number | undefined;
  readonly rest: number;
  readonly crown: CrownAtValve;
  readonly valveAngle: number;
}
/** A valve above its piston, as the clearance asks for it. */
export function aboveOf(train: Train): ValveAbovePiston {
  const lobe = lobeOf(train.lobe, `${train.side}LobeLift`);
  const lash = lashOf(train.tappet, train.lash);
  const { linkage, rest, crown, valveAngle, side, centerline, rocker } = train;
  return {
    linkage,
    rest,
    crown,
    valveAngle,
    side,
    centerline,
    lift: (a) => valveLift(profileLift(lobe, a), rocker, lash),
  };
}
