/**
 * The pressure, Pa, at which gas in a pipe stands still at its end: what a wall there feels. Exact for a shock; for an
 * expansion the error is of third order, and a vacuum is never quite reached.
 *
 * @param u speed away from the wall, m/s
 * @param p pressure of the gas, Pa
 * @param shockA 2 / ((gamma + 1) rho)
 * @param shockB p (gamma - 1) / (gamma + 1)
 * Source: E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, eqs. 4.6 and 4.7 (from memory): u =
 * (p - x) sqrt(A / (x + B)), a quadratic in x.
 */
export function wallPressure(u: number, p: number, shockA: number, shockB: number): number {
  const square = (u * u) / shockA;
  const root = Math.sqrt(square * (square + 4 * (p + shockB)));
  if (u < 0) return p + 0.5 * (square + root);
  const found = p + 0.5 * (square - root);
  return found > 0.01 * p ? found : 0.01 * p;
}
