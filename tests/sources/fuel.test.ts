import { describe, expect, it } from 'vitest';
import {
  antiKnockIndex,
  blendOctane,
  ethanolMoleFraction,
  ethanolMotorOctane,
  ethanolResearchOctane,
} from '../../src/physics/fuel/blend.ts';
import { density, heatingValue, latentHeat } from '../../src/physics/fuel/properties.ts';
import { blendStoichiometricRatio, stoichiometricRatio } from '../../src/physics/fuel/stoichiometry.ts';
import rows from './fuel.json';
import { type Calls, type Given, holdAgainst, numbered } from './printed.ts';

const ratio = (given: Given): number => stoichiometricRatio(given('H_per_C'), given('O_per_C'));
const megajoules = (share: number): number => heatingValue(share) / 1e6;
const kilojoules = (share: number): number => latentHeat(share) / 1e3;

const linearResearch = (given: Given): number =>
  blendOctane(ethanolMoleFraction(given('vol_frac')), given('RON_base'), given('RON_ethanol'));

const calls: Calls = {
  'stoichiometric A/F isooctane CH2.25': ratio,
  'stoichiometric A/F gasoline CH1.87': ratio,
  'stoichiometric A/F ethanol CH3O0.5': ratio,
  'stoichiometric A/F methanol CH4O': ratio,
  'stoichiometric A/F methane CH4': ratio,
  'LHV ethanol': () => megajoules(1),
  'LHV ethanol (liquid)': () => megajoules(1),
  'LHV gasoline': () => megajoules(0),
  'latent heat ethanol at 60 F': () => kilojoules(1),
  'latent heat ethanol': () => kilojoules(1),
  'latent heat gasoline at 60 F': () => kilojoules(0),
  'latent heat gasoline': () => kilojoules(0),
  'density ethanol 60 F': () => density(1),
  'density gasoline mid range': () => density(0),
  'RON ethanol': () => ethanolResearchOctane,
  'MON ethanol': () => ethanolMotorOctane,
  'molar ethanol fraction of E85 by mass (example)': (given) =>
    // equal densities make the volume share a mass share; 46 against 46.07 g/mol is inside the tolerance
    ethanolMoleFraction(given('mass_frac'), {
      ethanolDensity: 1,
      gasolineDensity: 1,
      gasolineMolarMass: given('MW_gas') / 1000,
    }),
  'blend octane by molar fraction (example)': (given) => blendOctane(given('x_mol'), given('ON_g'), given('ON_e')),
  'molar ethanol fraction from volume fraction': (given) =>
    ethanolMoleFraction(given('vol_frac'), {
      ethanolDensity: given('rho_e_kg_L') * 1000,
      gasolineDensity: given('rho_g_kg_L') * 1000,
      gasolineMolarMass: given('MW_g') / 1000,
    }),
  'linear molar RON of blend': linearResearch,
  'molar blend with interaction term': (given) => blendOctane(given('x_e'), given('ON_g'), given('ON_e'), given('Z')),
  // The example mixes 10 % along the straight line by volume, which understates the gain; the arithmetic is the same.
  'volume-linear pump example E10': (given) =>
    antiKnockIndex(blendOctane(0.1, given('RON_g'), given('RON_e')), blendOctane(0.1, given('MON_g'), given('MON_e'))),
  AKI: (given) => antiKnockIndex(given('RON'), given('MON')),
};

const methanol = 'methanol is not a fuel of this notebook, so no function returns its properties';
const isooctane = 'isooctane is a reference fuel, not one of this notebook';
const vapor = 'heating value of the vapor from formation enthalpies; the fuel functions return that of the liquid';

const reasons: Readonly<Record<string, string>> = {
  'GAS-77': methanol,
  'GAS-80': methanol,
  'GAS-82': methanol,
  'GAS-85': methanol,
  'GAS-86': methanol,
  'GAS-90': methanol,
  'GAS-94': methanol,
  'GAS-87': isooctane,
  'GAS-91': isooctane,
  'GAS-95': isooctane,
  'GAS-97': isooctane,
  'GAS-98': vapor,
  'GAS-99': vapor,
  // Two published figures for one fuel, 1.3 % apart and further than the row's tolerance; held below to 2 %.
  'GAS-88': 'Heywood’s 44.0 MJ/kg for gasoline (from memory) contradicts the 43.44 of DOE, which the product uses',
};

describe('fuel figures in print', () => {
  const judged = (id: string): boolean => !(id in reasons);
  const ids = [...numbered('GAS', 70, 99), ...numbered('KNO', 22, 33)];
  holdAgainst(
    rows.filter((row) => judged(row.id)),
    ids.filter(judged),
    calls,
  );

  it('are all judged but for the rows given a reason', () => {
    const left = rows.filter((row) => !judged(row.id)).map((row) => row.id);
    expect(left.toSorted()).toEqual(Object.keys(reasons).toSorted());
  });

  it('has a gasoline within 2 % of the 44.0 MJ/kg of Heywood, Table D.4 (from memory), where DOE prints 43.44', () => {
    expect(Math.abs(heatingValue(0) / 44.0e6 - 1)).toBeLessThan(0.02);
  });

  it('has a liquid ethanol that differs from the vapor (27.73 MJ/kg, NASA TM-4513) by about its latent heat', () => {
    expect(Math.abs((heatingValue(1) + latentHeat(1)) / 27.73e6 - 1)).toBeLessThan(0.01);
  });

  // common practice, no source; those figures start from 14.7 for gasoline, ours from 14.6
  it.each([
    [0.1, 14.1],
    [0.85, 9.8],
  ])('burns with %f of ethanol at about %f to 1, as the trade quotes it', (share, quoted) => {
    expect(Math.abs(blendStoichiometricRatio(share) - quoted)).toBeLessThan(0.15);
  });

  // U.S. DOE, from memory: a gallon with 10 % ethanol holds about 3 % less energy than one of gasoline
  it('loses about 3 % of a gallon’s energy with 10 % ethanol', () => {
    const lost = 1 - (heatingValue(0.1) * density(0.1)) / (heatingValue(0) * density(0));
    expect(lost).toBeGreaterThan(0.025);
    expect(lost).toBeLessThan(0.04);
  });
});
