import { dryAirGasConstant } from './constants.ts';

// ISO 2533, the layer from -2 to 11 km of geopotential altitude
const seaLevelPressure = 101325; // Pa
const seaLevelTemperature = 288.15; // K
const lapse = 0.0065; // K/m
const gravity = 9.80665; // m/s2
const lowest = -2000; // m
const highest = 11000; // m

/** g/(R lapse) = 5.25588. */
const exponent = gravity / (dryAirGasConstant * lapse);
const seaLevelDensity = seaLevelPressure / (dryAirGasConstant * seaLevelTemperature);

/** Very cold air is denser than the layer's foot; the U.S. Standard Atmosphere carries the same lapse to -5 km. */
const lowestDensityAltitude = -5000;

/**
 * Temperature of the standard atmosphere, K.
 *
 * @param altitude geopotential, m, from -2,000 to 11,000 (the difference from a surveyed height is under 0.2 % there)
 * @throws RangeError outside that range
 * Source: ISO 2533.
 */
export function standardTemperature(altitude: number): number {
  if (!(altitude >= lowest && altitude <= highest)) {
    throw new RangeError('The standard atmosphere is used from 2 km below to 11 km above sea level only.');
  }
  return seaLevelTemperature - lapse * altitude;
}

/**
 * Pressure of the standard atmosphere, Pa.
 *
 * @param altitude geopotential, m, from -2,000 to 11,000
 * @throws RangeError outside that range
 * Source: ISO 2533.
 */
export function standardPressure(altitude: number): number {
  return seaLevelPressure * (standardTemperature(altitude) / seaLevelTemperature) ** exponent;
}

/**
 * Density of the standard (dry) atmosphere, kg/m3.
 *
 * @param altitude geopotential, m, from -2,000 to 11,000
 * @throws RangeError outside that range
 * Source: ISO 2533.
 */
export function standardDensity(altitude: number): number {
  return standardPressure(altitude) / (dryAirGasConstant * standardTemperature(altitude));
}

/**
 * The altitude at which the standard atmosphere has this pressure, m.
 *
 * @param pressure Pa
 * @throws RangeError when that altitude is outside -2 to 11 km
 * Source: ISO 2533, inverted.
 */
export function pressureAltitude(pressure: number): number {
  const altitude = altitudeOfShare(pressure / seaLevelPressure, exponent);
  if (!(altitude >= lowest && altitude <= highest)) {
    throw new RangeError('No altitude from 2 km below to 11 km above sea level has this pressure.');
  }
  return altitude;
}

/**
 * The altitude at which the standard atmosphere has this density, m.
 *
 * @param density kg/m3
 * @throws RangeError when that altitude is outside -5 to 11 km
 * Source: ISO 2533, inverted.
 */
export function densityAltitude(density: number): number {
  const altitude = altitudeOfShare(density / seaLevelDensity, exponent - 1);
  if (!(altitude >= lowestDensityAltitude && altitude <= highest)) {
    throw new RangeError('No altitude from 5 km below to 11 km above sea level has this air density.');
  }
  return altitude;
}

/** Altitude where a quantity that goes as (temperature ratio)^power has fallen to `share` of sea level, m. */
function altitudeOfShare(share: number, power: number): number {
  return (seaLevelTemperature / lapse) * (1 - share ** (1 / power));
}
