const calorie = 4.184; // J
const fitEnd = 1500; // K

// Heywood, 1988, Table 4.11, gasoline C8.26H15.5: cal/mol, with T in 1000 K
const [A1, A2, A3, A4, A5, A6] = [-24.078, 256.63, -201.68, 64.75, 0.5808, -27.562] as const;

/**
 * Molar absolute enthalpy of gasoline vapor C8.26H15.5, J/mol, counted from the elements at 298.15 K.
 *
 * The fit is cubic and runs away from about 1500 K; above that its specific heat is held there. Nothing depends on it
 * much: little fuel is left unburned at such temperatures.
 *
 * @param T K
 * Source: Heywood, 1988, eqs. 4.47-4.48 and Table 4.11.
 */
export function gasolineVaporEnthalpy(T: number): number {
  const t = Math.min(T, fitEnd) / 1000;
  const kilocalories = t * (A1 + t * (A2 / 2 + t * (A3 / 3 + (t * A4) / 4))) - A5 / t + A6; // eq. 4.48
  return 1000 * calorie * kilocalories + Math.max(0, T - fitEnd) * gasolineVaporSpecificHeat(fitEnd);
}

/** Molar specific heat at constant pressure of gasoline vapor, J/mol/K, at a temperature in K below 1500. */
function gasolineVaporSpecificHeat(T: number): number {
  const t = T / 1000;
  return calorie * (A1 + t * (A2 + t * (A3 + t * A4)) + A5 / t ** 2); // eq. 4.47
}
