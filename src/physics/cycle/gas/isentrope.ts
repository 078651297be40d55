import { type GasState, gasState, type GasTables } from './tables.ts';

/**
 * Temperature, K, after a small change of pressure without heat or friction. The change must be small: the exponent is
 * that of the start. Meant for gas below 1500 K, the composition of which stays.
 *
 * @param tables of the mixture
 * @param T K, before
 * @param from Pa
 * @param to Pa
 * @param burnt burned share of the mass
 * @param work where the state before is written
 */
export function isentropicTemperature(
  tables: GasTables,
  T: number,
  from: number,
  to: number,
  burnt: number,
  work: GasState,
): number {
  gasState(tables, T, from, burnt, work);
  return T * (to / from) ** (work.R / (work.cv + work.R));
}
