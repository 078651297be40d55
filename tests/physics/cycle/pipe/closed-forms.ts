/**
 * The flow function as a formula: mass flow sqrt(R T0) / (A p0).
 *
 * Source: J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, eqs. C.8 and C.9 (from memory), in the Mach
 * number of the throat, which stays exact where the pressure hardly falls.
 */
export function orificePsi(pressureRatio: number, gamma: number): number {
  if (pressureRatio >= 1) return 0;
  const z = (gamma - 1) / gamma;
  const square = Math.min(1, (2 / (gamma - 1)) * Math.expm1(-z * Math.log(pressureRatio)));
  return Math.sqrt(gamma * square) * (1 + 0.5 * (gamma - 1) * square) ** (-(gamma + 1) / (2 * (gamma - 1)));
}

/**
 * 4 f L / D from a subsonic Mach number to sound, by Fanno's relation.
 *
 * Source: A. H. Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow, 1953, ch. 6 (from memory).
 */
export function fanno(mach: number, gamma: number): number {
  const square = mach * mach;
  const up = (gamma + 1) / 2;
  return (1 - square) / (gamma * square) + (up / gamma) * Math.log((up * square) / (1 + 0.5 * (gamma - 1) * square));
}

/** Area over the throat's at a Mach number (NACA Report 1135, eq. 80, from memory). */
export function areaRatio(mach: number, gamma: number): number {
  const power = (gamma + 1) / (2 * (gamma - 1));
  return ((2 / (gamma + 1)) * (1 + 0.5 * (gamma - 1) * mach * mach)) ** power / mach;
}
