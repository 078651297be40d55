import { flowPerArea } from './orifice.ts';
import { ratedAir } from './still-air.ts';

/** The depression that flow figures are mostly quoted at, Pa: 28 inches of water. */
export const usualDepression = 28 * 25.4 * 9.80665;

/**
 * Effective area, m2, of an opening that passes a flow at a depression on a flow bench.
 *
 * @param flow m3/s, the volume at the density of the room
 * @param depression Pa
 * Source: J. B. Heywood, 1988, eq. C.8 (from memory), in standard air. The same is used for an exhaust, which the bench
 * blows through: the air in front is then thicker than the room's. Left out, since it moves the area by 3 to 4 %, up or
 * down by where the bench counts the volume.
 */
export function benchArea(flow: number, depression: number): number {
  return flow / flowPerArea(depression, ratedAir);
}

/** What an effective area (m2) passes at a depression (Pa), m3/s: the other way round. */
export function benchFlow(area: number, depression: number): number {
  return area * flowPerArea(depression, ratedAir);
}

/**
 * Speed that a pressure drop gives to air that does not thin out on its way, m/s: Bernoulli's equation.
 *
 * @param drop Pa
 * @param density kg/m3
 */
export function bernoulliSpeed(drop: number, density: number): number {
  return Math.sqrt((2 * drop) / density);
}

/**
 * What a flow is multiplied by to compare it at another depression, as shops do it: by the square root of the
 * depressions (Pa). Air thins out as it speeds up, so that a real opening gains a little less.
 */
export function squareRootFactor(from: number, to: number): number {
  return bernoulliSpeed(to, ratedAir.density) / bernoulliSpeed(from, ratedAir.density);
}
