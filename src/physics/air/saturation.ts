import { zeroCelsius } from './constants.ts';

/** The range of both formulas: -100 to 200 C, in K. */
export const coldestSaturation = zeroCelsius - 100;
export const hottestSaturation = zeroCelsius + 200;

/** Where ice gives way to water, K. */
const triplePoint = 273.16;

// ASHRAE Fundamentals 2017, ch. 1, eq. 5 (over ice): C1 to C7
const overIce = (t: number): number =>
  -5.6745359e3 / t +
  6.3925247 -
  9.677843e-3 * t +
  6.2215701e-7 * t ** 2 +
  2.0747825e-9 * t ** 3 -
  9.484024e-13 * t ** 4 +
  4.1635019 * Math.log(t);

// ASHRAE Fundamentals 2017, ch. 1, eq. 6 (over water): C8 to C13
const overWater = (t: number): number =>
  -5.8002206e3 / t +
  1.3914993 -
  4.8640239e-2 * t +
  4.1764768e-5 * t ** 2 -
  1.4452093e-8 * t ** 3 +
  6.5459673 * Math.log(t);

/**
 * The pressure of water vapor over flat ice or water, Pa.
 *
 * No enhancement factor: the vapor is taken as alone in the space, here and wherever a dry pressure is formed from it.
 * The two formulas meet at the triple point; splitting them at 0 C, as the handbook prints them, leaves a step that
 * makes the inverse ambiguous.
 *
 * @param temperature air or dew-point temperature, K, from 173.15 to 473.15
 * @throws RangeError outside that range
 * Source: ASHRAE Fundamentals 2017, ch. 1, eqs. 5 and 6.
 */
export function saturationPressure(temperature: number): number {
  if (!(temperature >= coldestSaturation && temperature <= hottestSaturation)) {
    throw new RangeError('The vapor pressure of water is known from -100 to 200 degrees Celsius only.');
  }
  return Math.exp(temperature <= triplePoint ? overIce(temperature) : overWater(temperature));
}
