import { molarGasConstant, type Moles, type Species, species, speciesNames } from './species.ts';

/**
 * Molar enthalpy over R T; absolute, counted from the elements at 298.15 K.
 *
 * @param gas one gas
 * @param T K, 200 to 6000
 * Source: NASA TM-4513, 1993: h/RT = a1 + a2 T/2 + a3 T2/3 + a4 T3/4 + a5 T4/5 + a6/T.
 */
export function enthalpyOverRT(gas: Species, T: number): number {
  const [a1, a2, a3, a4, a5, a6] = T < 1000 ? gas.cold : gas.hot;
  return a1 + T * (a2 / 2 + T * (a3 / 3 + T * (a4 / 4 + (T * a5) / 5))) + a6 / T;
}

/**
 * Molar entropy at 1 bar over R.
 *
 * @param gas one gas
 * @param T K, 200 to 6000
 * Source: NASA TM-4513, 1993: s/R = a1 ln T + a2 T + a3 T2/2 + a4 T3/3 + a5 T4/4 + a7.
 */
export function entropyOverR(gas: Species, T: number): number {
  const [a1, a2, a3, a4, a5, , a7] = T < 1000 ? gas.cold : gas.hot;
  return a1 * Math.log(T) + T * (a2 + T * (a3 / 2 + T * (a4 / 3 + (T * a5) / 4))) + a7;
}

/** Molar Gibbs energy at 1 bar over R T, of one gas at a temperature in K, 200 to 6000. */
export function gibbsOverRT(gas: Species, T: number): number {
  return enthalpyOverRT(gas, T) - entropyOverR(gas, T);
}

/** Moles in all. */
export function total(moles: Moles): number {
  return speciesNames.reduce((sum, name) => sum + moles[name], 0);
}

/** Absolute enthalpy of a mixture, J, at a temperature in K, 200 to 6000. */
export function enthalpy(moles: Moles, T: number): number {
  const sum = speciesNames.reduce((sum, name) => sum + moles[name] * enthalpyOverRT(species[name], T), 0);
  return molarGasConstant * T * sum;
}
