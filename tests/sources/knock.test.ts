import { root } from '../../src/numerics/root.ts';
import { knockRate, octaneRequirement } from '../../src/physics/cycle/knock.ts';
import rows from './knock.json';
import { holdAgainst, numbered } from './printed.ts';

const atm = 101_325;

/** Time a state is borne before the fuel's octane number is what it requires, s: the induction time. */
const inductionTime = (octane: number, p: number, T: number): number =>
  root((time) => octaneRequirement(time * knockRate(p, T)) - octane, 1e-5, 1)!;

/** Integral on the fuel of 100 along the ramps of the row: 20 atm + 12.5 a ms, 760 K + 40 a ms. Simpson's rule. */
function ramps(milliseconds: number): number {
  const rate = (t: number): number => knockRate((20 + 12.5 * t) * atm, 760 + 40 * t) / 1000; // 1/ms
  const n = 200;
  const h = milliseconds / n;
  let sum = rate(0) + rate(milliseconds);
  for (let i = 1; i < n; i++) sum += (i % 2 === 1 ? 4 : 2) * rate(i * h);
  return (sum * h) / 3;
}
/** Share of the way to knock on a fuel: what is 1 at the integral that requires that fuel. */
const share = (octane: number, integral: number): number =>
  integral / root((i) => octaneRequirement(i) - octane, 1e-3, 10)!;

/** Constant in front of the pressure, ms, with the pressure in a unit of so many Pa. */
const constant = (unit: number): number => (1000 * Math.exp(-3800 / 800)) / knockRate(unit, 800);

// KNO-09 to 21 are of whole engines, no formula; 22 to 33 are blends, held with the fuels.
holdAgainst(rows, numbered('KNO', 1, 8), {
  'Douaud-Eyzat induction time': (given) => 1000 * inductionTime(given('ON'), given('p_atm') * atm, given('T_K')),
  'Douaud-Eyzat constant for pressure in bar': () => constant(1e5),
  'Douaud-Eyzat constant for pressure in kgf/cm2': () => constant(98_066.5),
  'Livengood-Wu autoignition time, linear ramps': (given) => root((t) => share(given('ON'), ramps(t)) - 1, 0.1, 5)!,
  'Livengood-Wu integral after 3 ms, same ramps': (given) => share(given('ON'), ramps(given('t_ms'))),
});
