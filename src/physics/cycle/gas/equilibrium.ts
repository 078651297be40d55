import { root } from '../../../numerics/root.ts';
import { gibbsOverRT } from './molar.ts';
import { type Atoms, type Moles, species } from './species.ts';

/** Constants in bar of six reactions, each forming one mole: K = product's pressure over the reactants'. */
export interface EquilibriumConstants {
  /** O2/2 = O */
  readonly O: number;
  /** H2/2 = H */
  readonly H: number;
  /** O2/2 + H2/2 = OH */
  readonly OH: number;
  /** H2 + O2/2 = H2O */
  readonly H2O: number;
  /** CO + O2/2 = CO2 */
  readonly CO2: number;
  /** N2/2 + O2/2 = NO */
  readonly NO: number;
}

/**
 * Constants of the reactions among burned gases, pressures in bar.
 *
 * @param T K, 200 to 6000
 * Source: Heywood, 1988, eq. 3.36 (from memory), on the Gibbs energies of NASA TM-4513, 1993.
 */
export function equilibriumConstants(T: number): EquilibriumConstants {
  const g = (name: keyof typeof species): number => gibbsOverRT(species[name], T);
  const [oxygen, hydrogen, nitrogen] = [g('O2') / 2, g('H2') / 2, g('N2') / 2];
  return {
    O: Math.exp(oxygen - g('O')),
    H: Math.exp(hydrogen - g('H')),
    OH: Math.exp(oxygen + hydrogen - g('OH')),
    H2O: Math.exp(2 * hydrogen + oxygen - g('H2O')),
    CO2: Math.exp(g('CO') + oxygen - g('CO2')),
    NO: Math.exp(nitrogen + oxygen - g('NO')),
  };
}

/**
 * Burned gas in chemical equilibrium: CO2, H2O, CO, H2, O2, N2, OH, NO, O and H, with argon looking on. Soot is left
 * out, so more carbon than oxygen has no answer.
 *
 * With the square root of the oxygen pressure given, carbon splits in a fixed share, and hydrogen and nitrogen each
 * follow from a quadratic; what is left is one crossing, that of the oxygen count.
 *
 * @param atoms moles of the elements; carbon, hydrogen, oxygen and nitrogen all above zero
 * @param T K, about 600 to 6000
 * @param p Pa
 * @returns moles of each gas
 * @throws RangeError where there is not enough oxygen to turn all carbon into CO
 */
export function equilibrium(atoms: Atoms, T: number, p: number): Moles {
  if (!(atoms.O > atoms.C)) throw new RangeError('The mixture is too rich: it would leave soot.');
  const constants = equilibriumConstants(T);
  const bar = p / 1e5;
  const excess = (logRoot: number): number => {
    const m = withOxygen(atoms, constants, bar, Math.exp(logRoot));
    return m.CO + 2 * m.CO2 + m.H2O + m.OH + m.NO + 2 * m.O2 + m.O - atoms.O;
  };
  const full = positiveRoot(1, constants.O, bar); // where oxygen alone would fill the whole pressure
  const logRoot = root(excess, -90, Math.log(0.999 * full), 1e-15);
  if (logRoot === null) throw new RangeError('No equilibrium was found for this mixture.');
  return withOxygen(atoms, constants, bar, Math.exp(logRoot));
}

/** Moles when the root of the oxygen pressure is `s`, in bar: right in every element but oxygen. */
function withOxygen(atoms: Atoms, k: EquilibriumConstants, bar: number, s: number): Moles {
  const CO = atoms.C / (1 + k.CO2 * s);
  const perH2 = 1 + k.H2O * s; // what holds two hydrogen atoms, over H2
  const perRootH2 = k.H + k.OH * s; // what holds one, over the root of H2
  const perRootN2 = k.NO * s; // what holds one nitrogen atom, over the root of N2
  const oxygen = s * s + k.O * s; // pressure of O2 and O
  let others = atoms.C + atoms.H / 2 + atoms.N / 2 + atoms.Ar; // moles but for O2 and O
  for (let pass = 0; ; pass++) {
    const f = others / (bar - oxygen); // moles per bar of partial pressure
    const h = positiveRoot(f * perH2, 0.5 * f * perRootH2, atoms.H / 2);
    const n = positiveRoot(f, 0.5 * f * perRootN2, atoms.N / 2);
    const before = others;
    others = atoms.C + atoms.Ar + f * (h * (h * perH2 + perRootH2) + n * (n + perRootN2));
    if (Math.abs(others - before) > 1e-15 * others && pass < 60) continue;
    return {
      N2: f * n * n,
      O2: f * s * s,
      Ar: atoms.Ar,
      CO2: CO * k.CO2 * s,
      H2O: f * k.H2O * s * h * h,
      CO,
      H2: f * h * h,
      OH: f * k.OH * s * h,
      O: f * k.O * s,
      H: f * k.H * h,
      NO: f * k.NO * s * n,
    };
  }
}

/** Positive root of a x2 + b x = c, without cancellation. */
function positiveRoot(a: number, b: number, c: number): number {
  return (2 * c) / (b + Math.sqrt(b * b + 4 * a * c));
}
