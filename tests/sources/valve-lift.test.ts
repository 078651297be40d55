import { maximumAt } from '../../src/numerics/maximum.ts';
import { overlapFactor, residualFraction } from '../../src/physics/valve/overlap.ts';
import { liftPolynomial, polynomialHeight } from '../../src/physics/valve/polynomial.ts';
import { type Given, holdAgainst, numbered } from './printed.ts';
import rows from './valve-lift.json';

const deg = Math.PI / 180;

/** The polynomial a row lists all five exponents of. */
function listed(id: string) {
  const { exponents } = rows.find((row) => row.id === id)!.inputs as { readonly exponents: readonly number[] };
  const [, p, q] = exponents;
  return liftPolynomial(p!, q! - p!);
}
const height = (id: string) => (given: Given) => polynomialHeight(listed(id), given('x'));

// Rises from 0 to 1, of which the product has no use: these rows hold the search for a maximum that finds every peak.
const velocity345 = (x: number) => 30 * x ** 2 - 60 * x ** 3 + 30 * x ** 4;
const acceleration345 = (x: number) => 60 * x - 180 * x ** 2 + 120 * x ** 3;
const velocity4567 = (x: number) => 140 * (x ** 3 - 3 * x ** 4 + 3 * x ** 5 - x ** 6);
const acceleration4567 = (x: number) => 140 * (3 * x ** 2 - 12 * x ** 3 + 15 * x ** 4 - 6 * x ** 5);
const peak = (f: (x: number) => number) => () => f(maximumAt(f, 0, 1, 20));

holdAgainst(rows, [...numbered('CAM', 23, 26), ...numbered('CAM', 29, 38)], {
  'residual gas mass fraction, Fox-Cheng-Heywood': (given) =>
    residualFraction({
      overlapFactor: given('OF_deg_per_m') * deg,
      speed: given('N_rev_s') * 2 * Math.PI,
      intakePressure: given('pi_bar') * 1e5,
      exhaustPressure: given('pe_bar') * 1e5,
      equivalenceRatio: given('phi'),
      compressionRatio: given('rc'),
    }),
  'overlap factor from its definition': (given) => {
    const areas = { intake: given('Ai_mm_deg') * 1e-3 * deg, exhaust: given('Ae_mm_deg') * 1e-3 * deg };
    return overlapFactor(given('Di_mm') * 1e-3, given('De_mm') * 1e-3, areas, given('Vd_cm3') * 1e-6) / deg;
  },
  'CAM-29': () => listed('CAM-29').coefficients,
  'CAM-30': height('CAM-30'),
  'CAM-31': () => listed('CAM-31').coefficients,
  'CAM-32': height('CAM-32'),
  'CAM-33': () => listed('CAM-33').coefficients,
  'CAM-34': height('CAM-34'),
  '3-4-5 polynomial rise: peak normalized velocity': peak(velocity345),
  '3-4-5 polynomial rise: peak normalized acceleration': peak(acceleration345),
  '4-5-6-7 polynomial rise: peak normalized velocity': peak(velocity4567),
  '4-5-6-7 polynomial rise: peak normalized acceleration': peak(acceleration4567),
});
