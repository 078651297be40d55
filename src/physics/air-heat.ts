import { dryAir, massOf, molarGasConstant, species } from './cycle/gas/species.ts';

const parts = (['N2', 'O2', 'Ar'] as const).map((name) => ({ share: dryAir[name], ...species[name] }));

type Six = readonly [number, number, number, number, number, number];
const mixed = (range: 'cold' | 'hot'): Six => {
  const sum = (i: number): number => parts.reduce((total, part) => total + part.share * part[range][i]!, 0);
  return [sum(0), sum(1), sum(2), sum(3), sum(4), sum(5)]; // cp and h of a mixture are linear in the shares
};
const cold = mixed('cold');
const hot = mixed('hot');

/** Gas constant of dry air, J/kg/K. */
export const airGasConstant =
  molarGasConstant / parts.reduce((total, part) => total + part.share * massOf(part.atoms), 0);

/**
 * Specific heat of dry air at constant volume, J/kg/K.
 *
 * @param temperature K, 200 to 6000
 * Source: NASA TM-4513, 1993: cp/R = a1 + a2 T + a3 T2 + a4 T3 + a5 T4, and cv = cp - R.
 */
export function airSpecificHeat(temperature: number): number {
  const [a1, a2, a3, a4, a5] = temperature < 1000 ? cold : hot;
  const t = temperature;
  return airGasConstant * (a1 - 1 + t * (a2 + t * (a3 + t * (a4 + t * a5))));
}

/**
 * Internal energy of dry air, J/kg, counted from the elements at 298.15 K as NASA TM-4513 counts enthalpy.
 *
 * @param temperature K, 200 to 6000
 * Source: NASA TM-4513, 1993: h/R = a1 T + a2 T2/2 + a3 T3/3 + a4 T4/4 + a5 T5/5 + a6, and u = h - R T.
 */
export function airInternalEnergy(temperature: number): number {
  const [a1, a2, a3, a4, a5, a6] = temperature < 1000 ? cold : hot;
  const t = temperature;
  return airGasConstant * (a6 + t * (a1 - 1 + t * (a2 / 2 + t * (a3 / 3 + t * (a4 / 4 + (t * a5) / 5)))));
}

/** Ratio of the specific heats of dry air at a temperature in K, 200 to 6000. */
export function airGamma(temperature: number): number {
  return 1 + airGasConstant / airSpecificHeat(temperature);
}
