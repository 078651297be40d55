import { durationAt, type Lobe, lobeAcceleration, lobeLift } from './lobe.ts';
import { type Flanks, type LobeTable, tableAcceleration, tableFlanks, tableLift } from './lobe-table.ts';

/** A lobe from its card or one that was measured. */
export type Profile = Lobe | LobeTable;

const isMeasured = (profile: Profile): profile is LobeTable => 'bend' in profile;

/** Tappet lift, m, at an angle from the peak, rad of crankshaft. */
export function profileLift(profile: Profile, angleFromPeak: number): number {
  return isMeasured(profile) ? tableLift(profile, angleFromPeak) : lobeLift(profile, angleFromPeak);
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
