import { inchOfMercury, zeroCelsius } from './constants.ts';

// Each standard adds its own rounded offset to a Celsius or Fahrenheit reading. The offsets are kept as printed:
// mixing 273.15 with 298 moves a factor by 0.00025, which is more than the printed digits.
const celsius = (temperature: number): number => temperature - zeroCelsius;
const fahrenheit = (temperature: number): number => celsius(temperature) * 1.8 + 32;

/**
 * SAE J1349 (June 1990) power correction factor for naturally aspirated engines, 1 at 99 kPa dry and 25 C.
 *
 * Corrects indicated power and takes the engine as 85 % mechanically efficient; 1.18 and 0.18 are the standard's
 * rounding of 1/0.85 and 0.15/0.85.
 *
 * @param dryPressure station pressure less vapor pressure, Pa
 * @param temperature inlet air, K
 * @throws RangeError when either is not above zero
 * Source: SAE J1349, June 1990.
 */
export function factorJ1349(dryPressure: number, temperature: number): number {
  return 1.18 * indicatedJ1349(dryPressure, temperature) - 0.18;
}

/**
 * SAE J1349 factor on brake torque when friction torque is known: friction does not change with the weather, so only
 * their sum is corrected.
 *
 * @param dryPressure station pressure less vapor pressure, Pa
 * @param temperature inlet air, K
 * @param brakeTorque measured, N m, above zero
 * @param frictionTorque at the same speed, N m, not negative
 * @throws RangeError when a pressure, temperature or torque is out of those bounds
 * Source: SAE J1349 (measured-friction form, from memory); same structure in B. Bowling, 1995.
 */
export function factorJ1349Friction(
  dryPressure: number,
  temperature: number,
  brakeTorque: number,
  frictionTorque: number,
): number {
  if (!(brakeTorque > 0)) throw new RangeError('Brake torque must be above zero.');
  if (!(frictionTorque >= 0)) throw new RangeError('Friction torque cannot be negative.');
  const indicated = brakeTorque + frictionTorque;
  return (indicated * indicatedJ1349(dryPressure, temperature) - frictionTorque) / brakeTorque;
}

/**
 * The older SAE J607 factor, 1 at 29.92 inHg dry and 60 F.
 *
 * @param dryPressure station pressure less vapor pressure, Pa
 * @param temperature inlet air, K
 * @throws RangeError when either is not above zero
 * Source: SAE J607 in the form printed by B. Bowling, 1995.
 */
export function factorJ607(dryPressure: number, temperature: number): number {
  requireAir(dryPressure, temperature);
  return ((29.92 * inchOfMercury) / dryPressure) * Math.sqrt((fahrenheit(temperature) + 459.7) / 519.7);
}

/**
 * DIN 70020 factor, 1 at 1013 mbar and 20 C. Alone among these it uses the total pressure: humidity takes no part.
 *
 * @param totalPressure station pressure, Pa
 * @param temperature inlet air, K
 * @throws RangeError when either is not above zero
 * Source: DIN 70020.
 */
export function factorDin70020(totalPressure: number, temperature: number): number {
  requireAir(totalPressure, temperature);
  return (101300 / totalPressure) * Math.sqrt((celsius(temperature) + 273) / 293);
}

/**
 * ISO 1585 factor for naturally aspirated spark-ignition engines, 1 at 99 kPa dry and 25 C.
 *
 * @param dryPressure station pressure less vapor pressure, Pa
 * @param temperature inlet air, K
 * @throws RangeError when either is not above zero
 * Source: ISO 1585:1992, cl. 6 (exponents from memory).
 */
export function factorIso1585(dryPressure: number, temperature: number): number {
  requireAir(dryPressure, temperature);
  return (99000 / dryPressure) ** 1.2 * ((celsius(temperature) + 273) / 298) ** 0.6;
}

/** J1349's air term before any allowance for friction. */
function indicatedJ1349(dryPressure: number, temperature: number): number {
  requireAir(dryPressure, temperature);
  return (99000 / dryPressure) * Math.sqrt((celsius(temperature) + 273) / 298);
}

function requireAir(pressure: number, temperature: number): void {
  if (!(pressure > 0)) throw new RangeError('Absolute pressure must be above zero.');
  // a hair above absolute zero the printed offsets would put a negative number under the root
  if (!(temperature > 1)) throw new RangeError('Absolute temperature must be above zero.');
}
