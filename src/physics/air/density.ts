import { dryAirGasConstant, waterToDryAir } from './constants.ts';

/**
 * Density of humid air, kg/m3, as a mixture of two ideal gases.
 *
 * Vapor is lighter than the air it displaces, so a humid day is thinner than its barometer says.
 *
 * @param dryPressure partial pressure of the dry air, Pa
 * @param vaporPressure partial pressure of the water vapor, Pa
 * @param temperature K
 * @throws RangeError when a pressure is negative or the temperature is not above zero
 * Source: ASHRAE Fundamentals 2017, ch. 1, eqs. 11 and 26, with the gas constant of ISO 2533 so that dry standard air
 * has exactly the standard density.
 */
export function moistAirDensity(dryPressure: number, vaporPressure: number, temperature: number): number {
  if (!(dryPressure >= 0 && vaporPressure >= 0)) throw new RangeError('A partial pressure cannot be negative.');
  if (!(temperature > 0)) throw new RangeError('Absolute temperature must be above zero.');
  return (dryPressure + waterToDryAir * vaporPressure) / (dryAirGasConstant * temperature);
}
