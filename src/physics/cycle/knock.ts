const milliseconds = 17.68; // p in atm
const pressureExponent = 1.7;
const activation = 3800; // K
const octaneExponent = 3.402;

/**
 * How fast the end gas comes nearer to igniting by itself, 1/s, on a fuel of octane number 100. Knock is due when the
 * integral over time reaches one (J. C. Livengood and P. C. Wu, 1955).
 *
 * The mixture's strength plays no part in it. A cycle at a held spark shows what is published of it all the same, as a
 * lean or a very rich charge burns later and cooler: least resistance asked for away from an equivalence ratio near 1.05,
 * and 1.3 to 3 numbers for a unit of air-fuel ratio on either side against about 2 (J. B. Heywood, 1988, sec. 9.6.3, from
 * memory). Where the spark follows the mixture the lean side of it stays flat. It cannot tell research from motor octane.
 *
 * @param p Pa
 * @param T of the end gas, K
 * Source: A. M. Douaud and P. Eyzat, SAE 780080, as Heywood, 1988, eq. 9.58 (from memory).
 */
export function knockRate(p: number, T: number): number {
  return ((p / 101_325) ** pressureExponent * Math.exp(-activation / T)) / (milliseconds / 1000); // eq. 9.58
}

/**
 * Octane number at which knock would just be due: a fuel's resistance multiplies the time to ignition, so the integral
 * on one fuel tells that on every other.
 *
 * @param integral of `knockRate` over the time until the end gas is gone
 * Source: A. M. Douaud and P. Eyzat, SAE 780080 (from memory).
 */
export function octaneRequirement(integral: number): number {
  return 100 * Math.max(integral, 1e-6) ** (1 / octaneExponent);
}

/**
 * What moisture changes in the octane requirement beyond what the cycle itself makes of it, octane numbers; negative in
 * moist air, and nothing at 7 g/kg.
 *
 * @param waterRatio kg of vapor to one of dry air
 * Source: SAE 960497, 1996 (abstract): -0.25 to -0.35 for a gram per kilogram, less the -0.06 that a cycle with this
 * correlation shows.
 */
export function moistureRelief(waterRatio: number): number {
  const published = -0.3;
  const own = -0.06;
  return (published - own) * (1000 * waterRatio - 7);
}
