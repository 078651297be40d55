// A second, independent formula for the vapor pressure of water, as a judge of the product's. The product uses ASHRAE's
// throughout, because Buck's includes an enhancement factor for moist air that must not be mixed with formulas without
// it: these stay on the test side.

/** Over water, pure vapor, Pa. A. L. Buck, J. Appl. Meteorol. 20 (1981) 1527, eq. 8. */
export function buckVaporPressure(celsius: number): number {
  return 611.21 * Math.exp((17.502 * celsius) / (240.97 + celsius));
}

/** What moist air adds to it, as a factor. Same source; pressure in hPa. */
export function buckEnhancement(hectopascals: number): number {
  return 1.0007 + 3.46e-6 * hectopascals;
}

/** Buck's revision of 1996, over water, Pa. */
export function buck1996(celsius: number): number {
  return 611.21 * Math.exp(((18.678 - celsius / 234.5) * celsius) / (257.14 + celsius));
}
