import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { equilibrium, equilibriumConstants } from '../../../src/physics/cycle/gas/equilibrium.ts';
import { freshCharge } from '../../../src/physics/cycle/gas/fresh.ts';
import { enthalpy, gibbsOverRT, total } from '../../../src/physics/cycle/gas/molar.ts';
import { massOf, type Moles, species, type SpeciesName, speciesNames } from '../../../src/physics/cycle/gas/species.ts';
import { gasoline } from '../../../src/physics/cycle/gas/tables.ts';

const elements = ['C', 'H', 'O', 'N', 'Ar'] as const;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const mixtures = fc.record({
  equivalenceRatio: number(0.3, 2),
  waterRatio: number(0, 0.05),
  T: number(900, 4500),
  logBar: number(-1, 2.7),
});

const burned = (equivalenceRatio: number, waterRatio: number, T: number, p: number): Moles =>
  equilibrium(freshCharge(gasoline, equivalenceRatio, waterRatio).atoms, T, p);

/** Gibbs energy of a mixture over R T, from its moles alone: each gas at its own partial pressure in bar. */
function gibbs(moles: Moles, T: number, p: number): number {
  const n = total(moles);
  const part = (name: SpeciesName): number =>
    moles[name] === 0 ? 0 : moles[name] * (gibbsOverRT(species[name], T) + Math.log((moles[name] / n) * (p / 1e5)));
  return speciesNames.reduce((sum, name) => sum + part(name), 0);
}

// Seven reactions that reach every mixture of the ten gases with the same elements.
const reactions: readonly Partial<Moles>[] = [
  { O2: -0.5, O: 1 },
  { H2: -0.5, H: 1 },
  { O2: -0.5, H2: -0.5, OH: 1 },
  { H2: -1, O2: -0.5, H2O: 1 },
  { CO: -1, O2: -0.5, CO2: 1 },
  { N2: -0.5, O2: -0.5, NO: 1 },
  { CO: -1, H2O: -1, CO2: 1, H2: 1 },
];

describe('burned gas in equilibrium', () => {
  it('holds every element it was made of, to 1e-10', () =>
    fc.assert(
      fc.property(mixtures, ({ equivalenceRatio, waterRatio, T, logBar }) => {
        const { atoms } = freshCharge(gasoline, equivalenceRatio, waterRatio);
        const moles = equilibrium(atoms, T, 1e5 * 10 ** logBar);
        for (const element of elements) {
          const held = speciesNames.reduce((sum, name) => sum + moles[name] * species[name].atoms[element], 0);
          expect(Math.abs(held / atoms[element] - 1)).toBeLessThan(1e-10);
        }
      }),
    ));

  it('has no driving force left in any reaction', () =>
    fc.assert(
      fc.property(mixtures, ({ equivalenceRatio, waterRatio, T, logBar }) => {
        const p = 1e5 * 10 ** logBar;
        const moles = burned(equivalenceRatio, waterRatio, T, p);
        const n = total(moles);
        for (const reaction of reactions) {
          let force = 0;
          for (const [name, change] of Object.entries(reaction) as [SpeciesName, number][]) {
            expect(moles[name]).toBeGreaterThan(0);
            force += change * (gibbsOverRT(species[name], T) + Math.log((moles[name] / n) * (p / 1e5)));
          }
          expect(Math.abs(force)).toBeLessThan(1e-9);
        }
      }),
    ));

  it('has the least Gibbs energy: any reaction either way raises it', () => {
    const p = 30e5;
    const moles = burned(1.05, 0.01, 2700, p);
    const least = gibbs(moles, 2700, p);
    for (const reaction of reactions)
      for (const way of [-1, 1]) {
        const parts = Object.entries(reaction) as [SpeciesName, number][];
        const scarce = Math.min(...parts.map(([name]) => moles[name]));
        const moved = { ...moles };
        for (const [name, change] of parts) moved[name] += way * 0.02 * scarce * change;
        expect(gibbs(moved, 2700, p)).toBeGreaterThan(least);
      }
  });

  it('weighs what the fresh charge weighed', () => {
    const moles = burned(1.12, 0.012, 2600, 60e5);
    const mass = speciesNames.reduce((sum, name) => sum + moles[name] * massOf(species[name].atoms), 0);
    expect(mass).toBeCloseTo(1, 10);
  });

  // Van Wylen and Sonntag, Fundamentals of Classical Thermodynamics, Table A.11 (from memory): ln K in atm, of the
  // reaction that takes the molecule apart; half of it where the table takes apart two.
  it.each([
    [2000, 'H', -12.841 / 2, 1],
    [2000, 'O', -14.622 / 2, 1],
    [2000, 'H2O', -8.145, -1],
    [2000, 'CO2', -6.635, -1],
    [2000, 'NO', -3.931, 1],
    [3000, 'H', -3.685 / 2, 1],
    [3000, 'O', -4.357 / 2, 1],
    [3000, 'H2O', -3.086, -1],
    [3000, 'CO2', -1.111, -1],
    [3000, 'NO', -2.114, 1],
  ] as const)('has at %f K the published constant of %s', (T, product, lnK, sign) =>
    expect(Math.abs(sign * Math.log(equilibriumConstants(T)[product]) - lnK)).toBeLessThan(0.06),
  );

  it('of a lean mixture is nearly all CO2, H2O, O2 and N2 at 1500 K, as Heywood, 1988, sec. 3.4, counts it', () => {
    const moles = burned(0.8, 0, 1500, 10e5);
    const { atoms, air } = freshCharge(gasoline, 0.8, 0);
    expect(moles.CO2 / atoms.C).toBeGreaterThan(0.999);
    expect((2 * moles.H2O) / atoms.H).toBeGreaterThan(0.999);
    expect(Math.abs(moles.O2 / (0.2 * air.O2) - 1)).toBeLessThan(0.01); // a fifth is left, but for a little NO
    expect(moles.N2 / air.N2).toBeGreaterThan(0.999);
  });

  it('of a rich mixture obeys the water-gas constant of 3.5 near 1740 K, Heywood, 1988, sec. 4.9.1 (from memory)', () => {
    const { CO, H2O, CO2, H2 } = burned(1.2, 0, 1740, 10e5);
    expect(Math.abs((CO * H2O) / (CO2 * H2) - 3.5)).toBeLessThan(0.15);
  });

  it('refuses a mixture that would leave soot, with a sentence', () =>
    expect(() => equilibrium({ C: 1, H: 2, O: 0.9, N: 3, Ar: 0 }, 2000, 1e5)).toThrow('too rich'));
});

describe('dissociation', () => {
  const moles = (T: number, p: number): number => total(burned(1, 0, T, p));
  const heat = (T: number, p: number): number =>
    (enthalpy(burned(1, 0, T + 1, p), T + 1) - enthalpy(burned(1, 0, T - 1, p), T - 1)) / 2; // J/kg/K

  it('begins in earnest above 2000 K: more moles and a larger specific heat the hotter it is', () => {
    expect(moles(1600, 30e5) / moles(1500, 30e5)).toBeLessThan(1.0005);
    const growth = [2000, 2300, 2600, 2900].map((T) => moles(T + 100, 30e5) / moles(T, 30e5));
    expect(growth).toEqual(growth.toSorted((a, b) => a - b));
    const heats = [1500, 2000, 2400, 2800].map((T) => heat(T, 30e5));
    expect(heats).toEqual(heats.toSorted((a, b) => a - b));
    expect(heats[3]! / heats[0]!).toBeGreaterThan(1.4);
  });

  it('is held back by pressure', () => expect(moles(2800, 2e5) / moles(2800, 100e5)).toBeGreaterThan(1.02));
});
