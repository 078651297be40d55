import { dryAirGasConstant } from '../air/constants.ts';

/** Air at rest in front of an opening. */
export interface StillAir {
  /** Pa absolute. */
  readonly pressure: number;
  /** kg/m3. */
  readonly density: number;
}

/** Ratio of the specific heats of cool air, as the orifice formulas take it. */
export const airGamma = 1.4;

/**
 * The air that rated flows are taken to mean: sea level of the standard atmosphere (ISO 2533), 101.325 kPa and 15 C.
 * A bench or a maker that means 70 F moves an area by 1 %.
 */
export const ratedAir: StillAir = { pressure: 101325, density: 101325 / (dryAirGasConstant * 288.15) };

/**
 * Speed of sound in dry air, m/s, at a temperature in K. Left out: moisture, which makes it up to 1 % faster.
 * Source: J. B. Heywood, 1988, app. C (from memory).
 */
export function soundSpeed(temperature: number): number {
  return Math.sqrt(airGamma * dryAirGasConstant * temperature);
}
