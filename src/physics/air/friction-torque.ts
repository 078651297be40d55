import { interpolate } from '../../numerics/interpolate.ts';

const footPerMinute = 0.3048 / 60; // m/s
const poundFootPerCubicInch = (4.4482216152605 * 0.3048) / 0.0254 ** 3; // N m per m3

// B. Bowling, engine test correction notes, 1995. He does not say where the table comes from.
const pistonSpeeds = [0, 1000, 2000, 3000, 4000, 5000, 6000, 7000]; // ft/min
const torques = [0.088, 0.12, 0.17, 0.233, 0.308, 0.433, 0.573, 0.725]; // lbf ft per in3 of displacement
const fastest = 7000 * footPerMinute * (1 + 1e-12);

/**
 * Friction torque of a whole engine, N m, estimated from its mean piston speed; straight lines between the rows.
 *
 * @param meanPistonSpeed m/s, from 0 to 35.56 (7,000 ft/min)
 * @param displacement of all cylinders, m3
 * @throws RangeError outside the table or for a displacement that is not above zero
 * Source: B. Bowling, 1995, table; its origin is not stated there.
 */
export function frictionTorque(meanPistonSpeed: number, displacement: number): number {
  if (!(meanPistonSpeed >= 0 && meanPistonSpeed <= fastest)) {
    throw new RangeError('The friction table covers mean piston speeds from 0 to 7,000 ft/min only.');
  }
  if (!(displacement > 0)) throw new RangeError('Displacement must be above zero.');
  return interpolate(pistonSpeeds, torques, meanPistonSpeed / footPerMinute) * poundFootPerCubicInch * displacement;
}
