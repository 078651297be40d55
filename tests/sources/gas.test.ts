import { describe, expect, it } from 'vitest';
import { root } from '../../src/numerics/root.ts';
import { airGamma, airGasConstant } from '../../src/physics/air-heat.ts';
import { equilibrium } from '../../src/physics/cycle/gas/equilibrium.ts';
import { gasolineVaporEnthalpy } from '../../src/physics/cycle/gas/gasoline-vapor.ts';
import { enthalpy, enthalpyOverRT } from '../../src/physics/cycle/gas/molar.ts';
import { type Atoms, molarGasConstant, species, type SpeciesName } from '../../src/physics/cycle/gas/species.ts';
import { gasoline } from '../../src/physics/cycle/gas/tables.ts';
import rows from './gas.json';
import { type Calls, type Given, holdAgainst, numbered } from './printed.ts';

const datum = 298.15; // K
const slope = (f: (T: number) => number, T: number): number => (f(T + 0.01) - f(T - 0.01)) / 0.02;
const molarEnthalpy =
  (name: SpeciesName) =>
  (T: number): number =>
    molarGasConstant * T * enthalpyOverRT(species[name], T); // J/mol

const published: readonly SpeciesName[] = ['N2', 'O2', 'CO2', 'H2O', 'CO', 'H2', 'Ar'];
const gases: Calls = Object.fromEntries(
  published.flatMap((name) => {
    const h = molarEnthalpy(name);
    // 1000 K is where the two polynomials meet: a slope across it would be that of neither.
    const heat = (given: Given): number => slope(h, given('T_K') === 1000 ? 1000.02 : given('T_K'));
    const rise = (given: Given): number => (h(given('T_K')) - h(datum)) / 1000;
    return [
      [`cp ${name}`, heat],
      [`H(T)-H(298.15) ${name}`, rise],
    ] as const;
  }),
);

/** Temperature of burned gas at constant pressure, from reactants at 298.15 K: the elements of air bring no enthalpy. */
function flame(formation: number, carbon: number, hydrogen: number, oxygen: number, p: number): number {
  const needed = carbon + hydrogen / 4 - oxygen / 2; // O2 for one mole of fuel
  const atoms: Atoms = { C: carbon, H: hydrogen, O: oxygen + 2 * needed, N: 2 * 3.76 * needed, Ar: 0 };
  return root((T) => enthalpy(equilibrium(atoms, T, p), T) - formation, 1500, 3500, 1e-8)!;
}
/** Enthalpies of formation, J/mol: NASA TM-4513, 1993. */
const flameOf = (formation: number, carbon: number, hydrogen: number, oxygen: number) => (given: Given) =>
  flame(formation, carbon, hydrogen, oxygen, given('P_atm') * 101_325);

// Rows 70 to 97 and 99 are of fuels as liquids, or of other fuels; the fuel figures are held in their own table.
holdAgainst(rows, [...numbered('GAS', 1, 69), 'GAS-98', ...numbered('GAS', 100, 106)], {
  ...gases,
  'enthalpy of formation CO2 298.15 K': () => molarEnthalpy('CO2')(datum) / 1000,
  'enthalpy of formation H2O 298.15 K': () => molarEnthalpy('H2O')(datum) / 1000,
  'enthalpy of formation CO 298.15 K': () => molarEnthalpy('CO')(datum) / 1000,
  'cp gasoline vapor C8.26H15.5 (MW 114.8)': (given) => slope(gasolineVaporEnthalpy, given('T_K')),
  'h gasoline vapor C8.26H15.5': (given) => gasolineVaporEnthalpy(given('T_K')) / 1000,
  'LHV gasoline vapor C8.26H15.5': () => gasoline.heatingValue / 1e6,
  'adiabatic flame temperature methane, phi 1, constant pressure': flameOf(-74_600, 1, 4, 0),
  'adiabatic flame temperature isooctane vapor, phi 1, constant pressure': flameOf(-224_010, 8, 18, 0),
  'adiabatic flame temperature ethanol vapor, phi 1, constant pressure': flameOf(-234_950, 2, 6, 1),
  'gamma of dry air': (given) => airGamma(given('T_K')),
  'speed of sound dry air': (given) => Math.sqrt(airGamma(given('T_K')) * airGasConstant * given('T_K')),
});

describe('the gasoline that is burned', () => {
  it('weighs the 114.8 g/mol of Heywood, 1988, Table 4.11', () =>
    expect(gasoline.molarMass * 1000).toBeCloseTo(114.8, 1));

  it('has in its vapor what the liquid of Heywood, Table D.4 (44.0 MJ/kg, from memory) and its evaporation make, within 2 %', () =>
    expect(Math.abs(gasoline.heatingValue / (44.0e6 + gasoline.latentHeat) - 1)).toBeLessThan(0.02));
});
