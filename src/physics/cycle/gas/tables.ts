import { equilibrium } from './equilibrium.ts';
import { freshCharge } from './fresh.ts';
import { gasolineVaporEnthalpy } from './gasoline-vapor.ts';
import { enthalpy, enthalpyOverRT, total } from './molar.ts';
import { massOf, molarGasConstant, type Moles, species } from './species.ts';

const carbon = 8.26; // Heywood, 1988, Table 4.11
const hydrogen = 15.5;
const molarMass = massOf({ C: carbon, H: hydrogen, O: 0, N: 0, Ar: 0 });

/** The gasoline that is burned, C8.26H15.5 of Heywood, 1988, Table 4.11. */
export const gasoline = {
  /** Atoms in a mean molecule. */
  carbon,
  hydrogen,
  /** kg/mol */
  molarMass,
  /** J/kg (Heywood, 1988, Table D.4, from memory). */
  latentHeat: 350e3,
  /** Lower heating value of the vapor, J/kg, from the formation enthalpies. */
  heatingValue: heatingValueOfVapor(),
} as const;

/** What a gas of one mixture is like at any temperature, pressure and burned share; read by `gasState`. */
export interface GasTables {
  readonly equivalenceRatio: number;
  /** kg of vapor to one of dry air */
  readonly waterRatio: number;
  /** kg of fuel to one of dry air */
  readonly fuelRatio: number;
  /** kg of dry air in one of fresh charge */
  readonly airShare: number;
  /** Gas constant of the fresh charge, fuel all vapor, J/kg/K. */
  readonly freshR: number;
  /** Absolute internal energy of the fresh charge, J/kg, at each temperature. */
  readonly fresh: Float64Array;
  /** Absolute internal energy and gas constant of the burned gas, in turn, at each temperature and in it each pressure. */
  readonly burned: Float64Array;
}

/** What `gasState` answers. */
export interface GasState {
  /** Absolute internal energy, J/kg. */
  u: number;
  /** Its slope over temperature at constant pressure and composition table, J/kg/K. */
  cv: number;
  /** Gas constant, J/kg/K. */
  R: number;
}

const coldest = 200; // K
const step = 25; // K
const rows = 133; // to 3500 K
const lowest = 1e5; // Pa
const pressures = 9; // each twice the one before: 1 to 256 bar
const stride = 2 * pressures;
const frozen = 1500; // K; Heywood, 1988, sec. 4.9 (from memory): below about 1700 K reactions are too slow to follow
const kept = 32;
const known = new Map<string, GasTables>();

/**
 * Tables of one mixture of gasoline vapor, air and moisture: fresh, and burned to chemical equilibrium, with the
 * composition below 1500 K frozen at what it was there. The same mixture asked again is remembered.
 *
 * @param equivalenceRatio fuel over what the air can burn, above 0 to 2
 * @param waterRatio kg of vapor to one of dry air
 * @throws RangeError outside those, or where the mixture would leave soot
 * Source: NASA TM-4513, 1993, and Heywood, 1988, eq. 4.48, for the gases; Heywood, 1988, sec. 3.7, for the equilibrium.
 */
export function gasTables(equivalenceRatio: number, waterRatio: number): GasTables {
  const key = `${equivalenceRatio} ${waterRatio}`;
  const found = known.get(key);
  if (found) return found;
  if (!(equivalenceRatio > 0 && equivalenceRatio <= 2))
    throw new RangeError('The equivalence ratio must lie above 0 and not beyond 2.');
  if (!(waterRatio >= 0 && waterRatio <= 0.2))
    throw new RangeError('The moisture must lie between 0 and 0.2 kg to a kilogram of dry air.');
  const made = built(equivalenceRatio, waterRatio);
  if (known.size === kept) known.delete(known.keys().next().value as string); // the oldest
  known.set(key, made);
  return made;
}

function built(equivalenceRatio: number, waterRatio: number): GasTables {
  const charge = freshCharge(gasoline, equivalenceRatio, waterRatio);
  const freshR = molarGasConstant * (total(charge.air) + charge.fuel);
  const fresh = new Float64Array(rows);
  const burned = new Float64Array(rows * stride);
  const frozenAt: Moles[] = [];
  for (let k = 0; k < pressures; k++) frozenAt.push(equilibrium(charge.atoms, frozen, lowest * 2 ** k));

  for (let i = 0; i < rows; i++) {
    const T = coldest + i * step;
    fresh[i] = enthalpy(charge.air, T) + charge.fuel * gasolineVaporEnthalpy(T) - freshR * T;
    for (let k = 0; k < pressures; k++) {
      const moles = T <= frozen ? frozenAt[k]! : equilibrium(charge.atoms, T, lowest * 2 ** k);
      const R = molarGasConstant * total(moles);
      burned[i * stride + 2 * k] = enthalpy(moles, T) - R * T;
      burned[i * stride + 2 * k + 1] = R;
    }
  }
  const { fuelRatio, airShare } = charge;
  return { equivalenceRatio, waterRatio, fuelRatio, airShare, freshR, fresh, burned };
}

/**
 * State of a mixture of fresh and burned gas. Energy is a straight line between rows 25 K apart, so that its slope is
 * exactly `cv`, and goes on straight outside 200 to 3500 K; between pressures it follows their logarithm, and outside 1
 * to 256 bar it holds.
 *
 * @param tables of the mixture
 * @param T K
 * @param p Pa
 * @param burnt burned share of the mass
 * @param out where the answer is written
 */
export function gasState(tables: GasTables, T: number, p: number, burnt: number, out: GasState): void {
  const fresh = tables.fresh;
  const burned = tables.burned;
  const place = (T - coldest) / step;
  let i = place | 0;
  if (!(i > 0)) i = 0;
  else if (i > rows - 2) i = rows - 2;
  const f = place - i;

  let level = Math.log2(p / lowest);
  if (!(level > 0)) level = 0;
  else if (level > pressures - 1) level = pressures - 1;
  let k = level | 0;
  if (k > pressures - 2) k = pressures - 2;
  const w = level - k;

  const a = i * stride + 2 * k;
  const b = a + stride;
  const u0 = burned[a]! + w * (burned[a + 2]! - burned[a]!);
  const u1 = burned[b]! + w * (burned[b + 2]! - burned[b]!);
  const R0 = burned[a + 1]! + w * (burned[a + 3]! - burned[a + 1]!);
  const R1 = burned[b + 1]! + w * (burned[b + 3]! - burned[b + 1]!);

  const unburnt = 1 - burnt;
  const low = unburnt * fresh[i]! + burnt * u0;
  const high = unburnt * fresh[i + 1]! + burnt * u1;
  out.u = low + f * (high - low);
  out.cv = (high - low) / step;
  out.R = unburnt * tables.freshR + burnt * (R0 + (f < 0 ? 0 : f > 1 ? 1 : f) * (R1 - R0)); // R holds outside the rows
}

function heatingValueOfVapor(): number {
  const T = 298.15;
  const formed = (name: 'CO2' | 'H2O'): number => enthalpyOverRT(species[name], T) * molarGasConstant * T;
  return (gasolineVaporEnthalpy(T) - carbon * formed('CO2') - (hydrogen / 2) * formed('H2O')) / molarMass;
}
