import { root } from '../../numerics/root.ts';
import { waterToDryAir, zeroCelsius } from './constants.ts';
import { coldestSaturation, hottestSaturation, saturationPressure } from './saturation.ts';

/**
 * Partial pressure of water vapor, Pa, from relative humidity.
 *
 * @param temperature air temperature, K
 * @param relativeHumidity 0 to 1
 * @throws RangeError when the humidity is negative or over 100 %
 * Source: ASHRAE Fundamentals 2017, ch. 1, eq. 22 (vapor as an ideal gas).
 */
export function vaporPressureFromRelative(temperature: number, relativeHumidity: number): number {
  if (!(relativeHumidity >= 0)) throw new RangeError('Relative humidity cannot be negative.');
  if (relativeHumidity > 1) throw new RangeError('Relative humidity is over 100 %.');
  return relativeHumidity * saturationPressure(temperature);
}

/**
 * Partial pressure of water vapor, Pa, from the dew point (below freezing: the frost point).
 *
 * @param dewPoint K
 * @param temperature air temperature, K; give it to have the pair checked
 * @throws RangeError when the dew point is warmer than the air
 * Source: ASHRAE Fundamentals 2017, ch. 1, eq. 36.
 */
export function vaporPressureFromDewPoint(dewPoint: number, temperature: number = dewPoint): number {
  if (dewPoint > temperature) throw new RangeError('The dew point is warmer than the air.');
  return saturationPressure(dewPoint);
}

/**
 * Partial pressure of water vapor, Pa, from a wet-bulb thermometer. Below 0 C the wick is taken as frozen.
 *
 * @param temperature air (dry-bulb) temperature, K
 * @param wetBulb K
 * @param pressure station pressure, Pa
 * @throws RangeError when the wet bulb is warmer than the air, colder than dry air would make it, or boiling
 * Source: ASHRAE Fundamentals 2017, ch. 1, eqs. 33 and 35.
 */
export function vaporPressureFromWetBulb(temperature: number, wetBulb: number, pressure: number): number {
  if (wetBulb > temperature) throw new RangeError('The wet bulb is warmer than the air.');
  const ratio = ratioAtWetBulb(temperature, wetBulb, pressure);
  if (ratio < -1e-9) throw new RangeError('The wet bulb is colder than even perfectly dry air would make it.');
  const held = Math.max(ratio, 0); // dry air that rounding left a hair below zero
  return (pressure * held) / (waterToDryAir + held); // eq. 20 turned round
}

/**
 * Dew point, K (below freezing: the frost point).
 *
 * Solved from the saturation pressure itself, not from the handbook's regressions (eqs. 37 and 38), so that it is
 * the exact inverse.
 *
 * @param vaporPressure Pa
 * @throws RangeError when there is no vapor, or when the dew point lies outside -100 to 200 C
 * Source: ASHRAE Fundamentals 2017, ch. 1, eqs. 5, 6 and 36.
 */
export function dewPointFromVaporPressure(vaporPressure: number): number {
  if (!(vaporPressure > 0)) throw new RangeError('Perfectly dry air has no dew point.');
  const wanted = Math.log(vaporPressure); // nearly straight in temperature, so few steps
  const found = root((t) => Math.log(saturationPressure(t)) - wanted, coldestSaturation, hottestSaturation);
  if (found === null) throw new RangeError('This vapor pressure has no dew point from -100 to 200 degrees Celsius.');
  return found;
}

/**
 * Mass of water vapor carried by each unit mass of dry air, kg/kg.
 *
 * @param vaporPressure Pa
 * @param pressure station pressure, Pa
 * @throws RangeError when the vapor pressure is negative or not below the total
 * Source: ASHRAE Fundamentals 2017, ch. 1, eq. 20.
 */
export function humidityRatio(vaporPressure: number, pressure: number): number {
  if (!(vaporPressure >= 0)) throw new RangeError('Vapor pressure cannot be negative.');
  if (!(vaporPressure < pressure)) throw new RangeError('The vapor pressure is not below the total pressure.');
  return (waterToDryAir * vaporPressure) / (pressure - vaporPressure);
}

/**
 * Wet-bulb temperature, K: what a wetted, ventilated thermometer shows.
 *
 * Just below freezing two readings can satisfy the relation, one with a wet wick and one with a frozen one (up to
 * about half a degree apart); the wet one is returned.
 *
 * @param temperature air temperature, K
 * @param vaporPressure Pa
 * @param pressure station pressure, Pa
 * @throws RangeError when the air would hold more vapor than saturation, or is hotter than boiling water
 * Source: ASHRAE Fundamentals 2017, ch. 1, eqs. 33 and 35, solved for the wet bulb.
 */
export function wetBulb(temperature: number, vaporPressure: number, pressure: number): number {
  const ratio = humidityRatio(vaporPressure, pressure);
  const saturated = saturationPressure(temperature);
  // a hair of room both ways, so that 100 % formed by another route does not fail on rounding
  if (vaporPressure > saturated * (1 + 1e-9)) throw new RangeError('Relative humidity is over 100 %.');
  if (vaporPressure > saturated * (1 - 1e-9)) return temperature;
  const excess = (t: number): number => ratioAtWetBulb(temperature, t, pressure) - ratio;
  const wet = temperature > zeroCelsius ? root(excess, zeroCelsius, temperature) : null;
  const found = wet ?? root(excess, coldestSaturation, Math.min(temperature, zeroCelsius - 1e-9));
  if (found === null) throw new RangeError('No wet bulb above -100 degrees Celsius fits this air.');
  return found;
}

/** Humidity ratio of air whose wet bulb is known, kg/kg; negative when no air could show it. */
function ratioAtWetBulb(temperature: number, wetBulbTemperature: number, pressure: number): number {
  const dry = temperature - zeroCelsius;
  const wet = wetBulbTemperature - zeroCelsius;
  const saturated = humidityRatio(saturationPressure(wetBulbTemperature), pressure);
  return wet >= 0
    ? ((2501 - 2.326 * wet) * saturated - 1.006 * (dry - wet)) / (2501 + 1.86 * dry - 4.186 * wet) // eq. 33, water
    : ((2830 - 0.24 * wet) * saturated - 1.006 * (dry - wet)) / (2830 + 1.86 * dry - 2.1 * wet); // eq. 35, ice
}
