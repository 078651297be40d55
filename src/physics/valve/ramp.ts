/** The last of a flank, below where the main curve is left. Lengths in m, angles in rad of crankshaft from the peak. */
export interface Ramp {
  /** Lift where the main curve is left and the ramp begins. */
  readonly height: number;
  readonly start: number;
  /** Where lift, velocity, acceleration and jerk are all zero. */
  readonly end: number;
  /** Slope at the start times the length of the ramp over its height: 5 continues a fifth power, less is rounder. */
  readonly steepness: number;
}

/**
 * A ramp that takes over a falling flank with its lift, velocity and acceleration, and comes to rest.
 *
 * With s from 0 at the end to 1 at the start it is height x s^4 ((5 - m) + (m - 4) s), m the steepness: the fourth power
 * leaves the jerk zero at the end too, and the one length at which the acceleration joins makes the ramp fall throughout.
 * Left out: a stretch of constant velocity, as ground on many lobes; a cam card does not tell its length.
 *
 * @param height lift at the join, m, above 0
 * @param start angle of the join from the peak, rad
 * @param slope how fast the flank falls there, m/rad, above 0
 * @param bend second derivative of the flank there, m/rad2
 */
export function ramp(height: number, start: number, slope: number, bend: number): Ramp {
  const fullness = Math.min((height * bend) / slope ** 2, 0.8); // 0.8 is a fifth power; rounding could pass it
  const steepness = 20 / (4 + Math.sqrt(16 - 20 * fullness));
  return { height, start, end: start + (steepness * height) / slope, steepness };
}

/** Lift, m, at an angle from the peak, rad, not before the start. */
export function rampLift({ height, start, end, steepness: m }: Ramp, angle: number): number {
  if (angle >= end) return 0;
  const s = (end - angle) / (end - start);
  return height * s ** 4 * (5 - m + (m - 4) * s);
}

/** How fast the lift falls, m/rad, at an angle from the peak, rad, not before the start. */
export function rampSlope({ height, start, end, steepness: m }: Ramp, angle: number): number {
  if (angle >= end) return 0;
  const s = (end - angle) / (end - start);
  return (height / (end - start)) * s ** 3 * (4 * (5 - m) + 5 * (m - 4) * s);
}

/** Second derivative of the lift, m/rad2, at an angle from the peak, rad, not before the start. */
export function rampBend({ height, start, end, steepness: m }: Ramp, angle: number): number {
  if (angle >= end) return 0;
  const s = (end - angle) / (end - start);
  return (height / (end - start) ** 2) * s ** 2 * (12 * (5 - m) + 20 * (m - 4) * s);
}

/** Integral of the lift over the ramp, m rad. */
export function rampArea({ height, start, end, steepness: m }: Ramp): number {
  return height * (end - start) * ((5 - m) / 5 + (m - 4) / 6);
}
