/** Molar gas constant, J/mol/K (CODATA 2018). */
const molar = 8.314462618;

/** One gas of dry air: its share by mole, its kg/mol, and a1 to a6 below and above 1000 K. */
interface Part {
  readonly share: number;
  readonly mass: number;
  readonly cold: readonly number[];
  readonly hot: readonly number[];
}

// Shares by mole: U.S. Standard Atmosphere, 1976, table 3 (from memory); the 0.04 % of other gases counts as nitrogen.
// Coefficients: B. J. McBride et al., NASA TM-4513, 1993.
const argon = [2.5, 0, 0, 0, 0, -745.375];
const parts: readonly Part[] = [
  {
    share: 1 - 0.20946 - 0.0093,
    mass: 28.0134e-3,
    cold: [3.53100528, -1.23660987e-4, -5.02999437e-7, 2.43530612e-9, -1.40881235e-12, -1046.97628],
    hot: [2.95257626, 1.39690057e-3, -4.92631691e-7, 7.86010367e-11, -4.60755321e-15, -923.948645],
  },
  {
    share: 0.20946,
    mass: 31.9988e-3,
    cold: [3.78245636, -2.99673415e-3, 9.847302e-6, -9.68129508e-9, 3.24372836e-12, -1063.94356],
    hot: [3.66096083, 6.56365523e-4, -1.41149485e-7, 2.05797658e-11, -1.29913248e-15, -1215.97725],
  },
  { share: 0.0093, mass: 39.948e-3, cold: argon, hot: argon },
];

type Six = readonly [number, number, number, number, number, number];
const mixed = (range: 'cold' | 'hot'): Six => {
  const sum = (i: number): number => parts.reduce((total, part) => total + part.share * part[range][i]!, 0);
  return [sum(0), sum(1), sum(2), sum(3), sum(4), sum(5)]; // cp and h of a mixture are linear in the shares
};
const cold = mixed('cold');
const hot = mixed('hot');

/** Gas constant of dry air, J/kg/K. */
export const airGasConstant = molar / parts.reduce((total, part) => total + part.share * part.mass, 0);

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
