import { root } from '../../numerics/root.ts';
import { airGamma, type StillAir } from './still-air.ts';

// J. B. Heywood, 1988, app. C: steady flow of an ideal gas from rest through an opening (from memory).

/** Pressure behind an opening over pressure in front, below which the flow no longer rises; gamma is cp/cv. */
export function criticalPressureRatio(gamma: number): number {
  return (2 / (gamma + 1)) ** (gamma / (gamma - 1)); // eq. C.6
}

/**
 * Mass flow through an opening as a pure number: mass flow x sqrt(R T) / (effective area x pressure in front).
 *
 * @param pressureRatio pressure behind over pressure in front; at 1 and above nothing flows
 * @param gamma cp/cv
 */
export function flowFunction(pressureRatio: number, gamma: number): number {
  const ratio = Math.max(pressureRatio, criticalPressureRatio(gamma)); // there eq. C.8 is eq. C.9, the choked flow
  if (ratio >= 1) return 0;
  const drop = 1 - ratio ** ((gamma - 1) / gamma);
  return ratio ** (1 / gamma) * Math.sqrt((2 * gamma * drop) / (gamma - 1)); // eq. C.8
}

/** A gas at rest in front of an opening: Pa absolute, K, J/kg/K, cp/cv. */
export interface GasAtRest {
  readonly pressure: number;
  readonly temperature: number;
  readonly gasConstant: number;
  readonly gamma: number;
}

/**
 * Mass flow through an opening, kg/s.
 *
 * @param area effective area (discharge coefficient times area), m2
 * @param gas in front of it
 * @param behind pressure behind it, Pa absolute
 */
export function orificeMassFlow(area: number, gas: GasAtRest, behind: number): number {
  const flux = gas.pressure / Math.sqrt(gas.gasConstant * gas.temperature);
  return area * flux * flowFunction(behind / gas.pressure, gas.gamma);
}

/**
 * Volume flow through an opening over its effective area, m/s, the volume counted at the density in front of it.
 *
 * @param drop pressure in front less pressure behind, Pa
 * @param air in front
 */
export function flowPerArea(drop: number, air: StillAir): number {
  return Math.sqrt(air.pressure / air.density) * flowFunction(1 - drop / air.pressure, airGamma);
}

/**
 * The pressure drop, Pa, that a volume flow over an effective area asks for; null where the opening chokes before.
 *
 * @param flow over area, m/s, the volume at the density in front
 * @param air in front
 */
export function dropAtFlow(flow: number, air: StillAir): number | null {
  const most = (1 - criticalPressureRatio(airGamma)) * air.pressure;
  if (!(flow > 0)) return 0;
  return flow > flowPerArea(most, air) ? null : root((drop) => flowPerArea(drop, air) - flow, 0, most);
}
