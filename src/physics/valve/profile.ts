import { durationAt, type Lobe, lobeAcceleration, lobeArea, lobeLift, lobeVelocity } from './lobe.ts';
import {
  type Flanks,
  type LobeTable,
  tableAcceleration,
  tableArea,
  tableFlanks,
  tableLift,
  tableVelocity,
} from './lobe-table.ts';

/** A lobe from its card or one that was measured. */
export type Profile = Lobe | LobeTable;

const isMeasured = (profile: Profile): profile is LobeTable => 'bend' in profile;

/** Tappet lift, m, at an angle from the peak, rad of crankshaft. */
export function profileLift(profile: Profile, angleFromPeak: number): number {
  return isMeasured(profile) ? tableLift(profile, angleFromPeak) : lobeLift(profile, angleFromPeak);
}

/** Tappet velocity, m/rad of crankshaft, positive while opening, at an angle from the peak, rad of crankshaft. */
export function profileVelocity(profile: Profile, angleFromPeak: number): number {
  return isMeasured(profile) ? tableVelocity(profile, angleFromPeak) : lobeVelocity(profile, angleFromPeak);
}

/** Tappet acceleration, m/rad2 of crankshaft, at an angle from the peak, rad of crankshaft. */
export function profileAcceleration(profile: Profile, angleFromPeak: number): number {
  return isMeasured(profile) ? tableAcceleration(profile, angleFromPeak) : lobeAcceleration(profile, angleFromPeak);
}

/** Where the tappet passes a lift (m), rad of crankshaft from the peak, the opening flank and the closing one. */
export function profileFlanks(profile: Profile, lift: number): Flanks {
  if (isMeasured(profile)) return tableFlanks(profile, lift);
  const half = durationAt(profile, lift) / 2;
  return { opening: -half, closing: half };
}

/** Crank angle during which the tappet is at or above a lift (m), rad, however unlike the flanks. */
export function profileDuration(profile: Profile, lift: number): number {
  const { opening, closing } = profileFlanks(profile, lift);
  return closing - opening;
}

/** Integral of the tappet's lift over the crank angle, m rad. */
export function profileArea(profile: Profile): number {
  return isMeasured(profile) ? tableArea(profile) : lobeArea(profile);
}

/** How far from the peak, rad of crankshaft, the longer flank reaches. */
export function profileReach(profile: Profile): number {
  return isMeasured(profile) ? Math.max(-profile.x[0]!, profile.x.at(-1)!) : profile.halfWidth;
}
