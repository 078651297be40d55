/** Molar gas constant, J/mol/K (CODATA 2018). */
export const molarGasConstant = 8.314462618;

/** Mole counts of the elements, per mole of a substance or per kilogram of a mixture. */
export interface Atoms {
  readonly C: number;
  readonly H: number;
  readonly O: number;
  readonly N: number;
  readonly Ar: number;
}

const atomicMass: Atoms = { C: 12.011e-3, H: 1.00794e-3, O: 15.9994e-3, N: 14.0067e-3, Ar: 39.948e-3 }; // kg/mol, IUPAC

/** Mass of so many moles of the elements, kg. */
export function massOf(atoms: Atoms): number {
  const { C, H, O, N, Ar } = atomicMass;
  return atoms.C * C + atoms.H * H + atoms.O * O + atoms.N * N + atoms.Ar * Ar;
}

/** Dry air by mole. U.S. Standard Atmosphere, 1976, table 3 (from memory); the 0.04 % of other gases counts as nitrogen. */
export const dryAir = { N2: 1 - 0.20946 - 0.0093, O2: 0.20946, Ar: 0.0093 } as const;

/** a1 to a7 of a NASA polynomial. */
type Seven = readonly [number, number, number, number, number, number, number];

/** One gas: what it is made of, and its polynomial below and above 1000 K. */
export interface Species {
  readonly atoms: Atoms;
  readonly cold: Seven;
  readonly hot: Seven;
}

const none: Atoms = { C: 0, H: 0, O: 0, N: 0, Ar: 0 };
const argon: Seven = [2.5, 0, 0, 0, 0, -745.375, 4.37967491];

// Coefficients: B. J. McBride, S. Gordon and M. A. Reno, NASA TM-4513, 1993 (200 to 1000 K, 1000 to 6000 K; 1 bar).
export const species = {
  N2: {
    atoms: { ...none, N: 2 },
    cold: [3.53100528, -1.23660987e-4, -5.02999437e-7, 2.43530612e-9, -1.40881235e-12, -1046.97628, 2.96747468],
    hot: [2.95257626, 1.39690057e-3, -4.92631691e-7, 7.86010367e-11, -4.60755321e-15, -923.948645, 5.87189252],
  },
  O2: {
    atoms: { ...none, O: 2 },
    cold: [3.78245636, -2.99673415e-3, 9.847302e-6, -9.68129508e-9, 3.24372836e-12, -1063.94356, 3.65767573],
    hot: [3.66096083, 6.56365523e-4, -1.41149485e-7, 2.05797658e-11, -1.29913248e-15, -1215.97725, 3.41536184],
  },
  Ar: { atoms: { ...none, Ar: 1 }, cold: argon, hot: argon },
  CO2: {
    atoms: { ...none, C: 1, O: 2 },
    cold: [2.35677352, 8.98459677e-3, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13, -48371.9697, 9.90105222],
    hot: [4.63659493, 2.74131991e-3, -9.95828531e-7, 1.60373011e-10, -9.16103468e-15, -49024.9341, -1.93534855],
  },
  H2O: {
    atoms: { ...none, H: 2, O: 1 },
    cold: [4.19864056, -2.0364341e-3, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12, -30293.7267, -0.849032208],
    hot: [2.67703787, 2.97318329e-3, -7.7376969e-7, 9.44336689e-11, -4.26900959e-15, -29885.8938, 6.88255571],
  },
  CO: {
    atoms: { ...none, C: 1, O: 1 },
    cold: [3.57953347, -6.1035368e-4, 1.01681433e-6, 9.07005884e-10, -9.04424499e-13, -14344.086, 3.50840928],
    hot: [3.04848583, 1.35172818e-3, -4.85794075e-7, 7.88536486e-11, -4.69807489e-15, -14266.1171, 6.0170979],
  },
  H2: {
    atoms: { ...none, H: 2 },
    cold: [2.34433112, 7.98052075e-3, -1.9478151e-5, 2.01572094e-8, -7.37611761e-12, -917.935173, 0.683010238],
    hot: [2.93286579, 8.26607967e-4, -1.46402335e-7, 1.54100359e-11, -6.88804432e-16, -813.065597, -1.02432887],
  },
  OH: {
    atoms: { ...none, H: 1, O: 1 },
    cold: [3.99201543, -2.40131752e-3, 4.61793841e-6, -3.88113333e-9, 1.3641147e-12, 3615.08056, -0.103925458],
    hot: [2.83864607, 1.10725586e-3, -2.93914978e-7, 4.20524247e-11, -2.42169092e-15, 3943.95852, 5.84452662],
  },
  O: {
    atoms: { ...none, O: 1 },
    cold: [3.1682671, -3.27931884e-3, 6.64306396e-6, -6.12806624e-9, 2.11265971e-12, 29122.2592, 2.05193346],
    hot: [2.54363697, -2.73162486e-5, -4.1902952e-9, 4.95481845e-12, -4.79553694e-16, 29226.012, 4.92229457],
  },
  H: {
    atoms: { ...none, H: 1 },
    cold: [2.5, 0, 0, 0, 0, 25473.6599, -0.446682853],
    hot: [2.50000286, -5.65334214e-9, 3.63251723e-12, -9.1994972e-16, 7.95260746e-20, 25473.6589, -0.446698494],
  },
  NO: {
    atoms: { ...none, N: 1, O: 1 },
    cold: [4.21859896, -4.63988124e-3, 1.10443049e-5, -9.34055507e-9, 2.80554874e-12, 9845.09964, 2.28061001],
    hot: [3.26071234, 1.19101135e-3, -4.29122646e-7, 6.94481463e-11, -4.03295681e-15, 9921.43132, 6.36900518],
  },
} satisfies Readonly<Record<string, Species>>;

export type SpeciesName = keyof typeof species;

export const speciesNames = Object.keys(species) as readonly SpeciesName[];

/** Moles of each gas, in all or per kilogram. */
export type Moles = Readonly<Record<SpeciesName, number>>;
