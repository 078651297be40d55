import { maximumAt } from '../../numerics/maximum.ts';
import { root } from '../../numerics/root.ts';
import {
  inflection,
  type LiftPolynomial,
  placeAtHeight,
  polynomialArea,
  polynomialBend,
  polynomialHeight,
  polynomialSlope,
} from './polynomial.ts';
import { type Ramp, rampArea, rampBend, rampLift, rampSlope } from './ramp.ts';

/**
 * A symmetric lobe as the tappet feels it: a lift polynomial from the peak down, then a ramp. Lift in m at the tappet,
 * angles in rad of crankshaft from the peak, of which a full turn of the camshaft has 4 pi.
 */
export interface Lobe extends LiftPolynomial {
  readonly lift: number;
  /** From the peak to the polynomial's own zero; no event is ever read there. */
  readonly halfWidth: number;
  /** Null where the polynomial runs to its zero. */
  readonly ramp: Ramp | null;
}

/** Tappet lift, m, at an angle from the peak, rad, either way. */
export function lobeLift(lobe: Lobe, angleFromPeak: number): number {
  const angle = Math.abs(angleFromPeak);
  if (lobe.ramp !== null && angle > lobe.ramp.start) return rampLift(lobe.ramp, angle);
  return lobe.lift * polynomialHeight(lobe, angle / lobe.halfWidth);
}

/** Tappet velocity, m/rad of crankshaft, positive while opening, at an angle from the peak, rad. */
export function lobeVelocity(lobe: Lobe, angleFromPeak: number): number {
  const angle = Math.abs(angleFromPeak);
  const falling =
    lobe.ramp !== null && angle > lobe.ramp.start
      ? rampSlope(lobe.ramp, angle)
      : (-lobe.lift / lobe.halfWidth) * polynomialSlope(lobe, angle / lobe.halfWidth);
  return angleFromPeak < 0 ? falling : -falling;
}

/** Tappet acceleration, m/rad2 of crankshaft, at an angle from the peak, rad, either way. */
export function lobeAcceleration(lobe: Lobe, angleFromPeak: number): number {
  const angle = Math.abs(angleFromPeak);
  if (lobe.ramp !== null && angle > lobe.ramp.start) return rampBend(lobe.ramp, angle);
  return (lobe.lift / lobe.halfWidth ** 2) * polynomialBend(lobe, angle / lobe.halfWidth);
}

/** Integral of the tappet's lift over the crank angle, both flanks and ramps, m rad. */
export function lobeArea(lobe: Lobe): number {
  const { ramp, halfWidth, lift } = lobe;
  const main = lift * halfWidth * polynomialArea(lobe, ramp === null ? 1 : ramp.start / halfWidth);
  return 2 * (main + (ramp === null ? 0 : rampArea(ramp)));
}

/** Crank angle during which the tappet is at or above a lift (m), rad: 0 above the peak, all of the lobe at 0 and below. */
export function durationAt(lobe: Lobe, lift: number): number {
  const { ramp } = lobe;
  if (ramp === null || lift >= ramp.height) return 2 * lobe.halfWidth * placeAtHeight(lobe, lift / lobe.lift);
  if (lift <= 0) return 2 * ramp.end;
  return 2 * (root((angle) => rampLift(ramp, angle) - lift, ramp.start, ramp.end) ?? ramp.start); // null: a hair below the join
}

/** Where the tappet is fastest, rad from the peak: its nose lies inside, its flanks and their ramps outside. */
export function noseHalfWidth(lobe: Lobe): number {
  const bend = lobe.halfWidth * inflection(lobe);
  return lobe.ramp === null || bend <= lobe.ramp.start
    ? bend
    : maximumAt((angle) => -lobeVelocity(lobe, angle), lobe.ramp.start, lobe.ramp.end, 20); // a join above the bend
}

/** Greatest speed of the tappet, m/rad of crankshaft. */
export function peakLobeVelocity(lobe: Lobe): number {
  return -lobeVelocity(lobe, noseHalfWidth(lobe));
}

/**
 * Greatest acceleration of the tappet, m/rad2 of crankshaft: that of the flank, which lifts it. The nose lets it down
 * hardest at the peak, with `lobeAcceleration(lobe, 0)`, the spring's business.
 */
export function peakLobeAcceleration(lobe: Lobe): number {
  const accelerationAt = (angle: number): number => lobeAcceleration(lobe, angle);
  const { ramp, halfWidth } = lobe;
  const highest = (from: number, to: number): number => accelerationAt(maximumAt(accelerationAt, from, to, 20));
  if (ramp === null) return highest(halfWidth * inflection(lobe), halfWidth);
  const bend = Math.min(halfWidth * inflection(lobe), ramp.start);
  return Math.max(highest(bend, ramp.start), highest(ramp.start, ramp.end)); // each has one peak; the join may be a cusp
}
