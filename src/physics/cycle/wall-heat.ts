/**
 * Heat transfer between gas and walls, W/m2/K.
 *
 * @param bore m
 * @param p Pa
 * @param T mean temperature of the gas, K
 * @param gasSpeed m/s
 * Source: G. Woschni, SAE 670931, in the form of Heywood, 1988, eq. 12.18 (from memory), T to the -0.55.
 */
export function woschni(bore: number, p: number, T: number, gasSpeed: number): number {
  return 3.26 * bore ** -0.2 * (p / 1000) ** 0.8 * T ** -0.55 * gasSpeed ** 0.8; // eq. 12.18, p in kPa
}

/** Gas speed, m/s, while a valve is open, from the mean piston speed (Heywood, 1988, eq. 12.19). */
export function gasExchangeSpeed(pistonSpeed: number): number {
  return 6.18 * pistonSpeed;
}

/** Gas speed, m/s, while both valves are closed and nothing burns (Heywood, 1988, eq. 12.19). */
export function closedSpeed(pistonSpeed: number): number {
  return 2.28 * pistonSpeed;
}

/**
 * Gas speed, m/s, that burning adds to that of the closed cylinder.
 *
 * @param swept volume of the cylinder, m3
 * @param perVolume temperature over pressure and volume when the intake closed, K/(Pa m3)
 * @param rise pressure above that without a fire, Pa; below zero counts as none
 * Source: Heywood, 1988, eq. 12.19.
 */
export function combustionSpeed(swept: number, perVolume: number, rise: number): number {
  return 3.24e-3 * swept * perVolume * Math.max(0, rise);
}

/**
 * Pressure there would be without a fire, Pa.
 *
 * @param closingPressure when the intake closed, Pa
 * @param volumeRatio volume when the intake closed over the volume now
 */
export function unfiredPressure(closingPressure: number, volumeRatio: number): number {
  return closingPressure * volumeRatio ** 1.32; // a usual polytropic exponent, common practice, no source
}

/**
 * Area of the walls of a cylinder, m2: head and crown count 1.1 bore areas each (common practice, no source).
 *
 * @param bore m
 * @param drop of the piston below top dead center, m
 */
export function wallArea(bore: number, drop: number): number {
  return Math.PI * bore * (0.55 * bore + drop);
}
