import { pressureAltitude, standardPressure } from './standard-atmosphere.ts';

/**
 * Station pressure, Pa, behind an altimeter setting: the standard atmosphere reversed, so temperature takes no part.
 *
 * The setting says how far the standard atmosphere must be shifted for it to fit the station's pressure. The height of
 * the instrument above the field (3 m and 0.3 mbar in the weather services' form) is left out.
 *
 * @param setting altimeter setting ("QNH"), Pa
 * @param altitude of the station, m
 * @throws RangeError when either leaves the standard atmosphere's -2 to 11 km
 * Source: ISO 2533.
 */
export function stationFromAltimeter(setting: number, altitude: number): number {
  return standardPressure(altitude + pressureAltitude(setting));
}

/**
 * Station pressure, Pa, behind a barometer reading reduced to sea level with the day's own temperature.
 *
 * @param seaLevelPressure Pa
 * @param altitude of the station, m
 * @param temperature air temperature at the station, K
 * @throws RangeError when a pressure or temperature is not above zero
 * Source: S. L. Hess, Introduction to Theoretical Meteorology, 1959, sec. 6.5, in the form of ASHRAE-based libraries.
 */
export function stationFromSeaLevel(seaLevelPressure: number, altitude: number, temperature: number): number {
  return positive(seaLevelPressure) / columnRatio(altitude, temperature);
}

/**
 * The reading a weather report would give, Pa, for this station pressure. Inverse of `stationFromSeaLevel`.
 *
 * @param station station pressure, Pa
 * @param altitude of the station, m
 * @param temperature air temperature at the station, K
 * @throws RangeError when a pressure or temperature is not above zero
 * Source: as `stationFromSeaLevel`.
 */
export function seaLevelFromStation(station: number, altitude: number, temperature: number): number {
  return positive(station) * columnRatio(altitude, temperature);
}

function columnRatio(altitude: number, temperature: number): number {
  const column = temperature + (0.0065 * altitude) / 2; // mean of a column warming by 6.5 K/km toward sea level
  if (!(temperature > 0 && column > 0)) throw new RangeError('Absolute temperature must be above zero.');
  const scaleHeight = (287.055 * column) / 9.807;
  return Math.exp(altitude / scaleHeight);
}

function positive(pressure: number): number {
  if (!(pressure > 0)) throw new RangeError('Absolute pressure must be above zero.');
  return pressure;
}
