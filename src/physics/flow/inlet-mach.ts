/**
 * Mean of an area over the time its valve is open, m2.
 *
 * @param angles crank angles, rising, rad, over the whole opening
 * @param areas at them, m2
 * @param duration how long the valve is off its seat, rad of crankshaft
 */
export function meanOpenArea(angles: ArrayLike<number>, areas: ArrayLike<number>, duration: number): number {
  let sum = 0;
  for (let i = 1; i < angles.length; i++) sum += ((areas[i]! + areas[i - 1]!) / 2) * (angles[i]! - angles[i - 1]!);
  return sum / duration;
}

/** What the inlet Mach index is made of. */
export interface Inlet {
  /** m */
  readonly bore: number;
  /** Of the intake valve's head, m. */
  readonly valveDiameter: number;
  /** Effective area over the area of the head, mean over the opening. */
  readonly flowCoefficient: number;
  /** m/s */
  readonly meanPistonSpeed: number;
  /** Of the air in front of the engine, m/s. */
  readonly soundSpeed: number;
}

/**
 * Taylor's inlet Mach index Z: the piston's mean speed brought to the mean effective area of the intake valve, over the
 * speed of sound. It takes the cylinder as filled in half a turn, whatever the valve's opening; no gas need move so fast.
 *
 * Source: C. F. Taylor, vol. 1, ch. 6 (from memory). With the mean over the opening it is the number Zsm of the JSME
 * Mechanical Engineers' encyclopedia, too.
 */
export function inletMachIndex({ bore, valveDiameter, flowCoefficient, meanPistonSpeed, soundSpeed }: Inlet): number {
  return ((bore / valveDiameter) ** 2 * meanPistonSpeed) / (flowCoefficient * soundSpeed);
}

/**
 * Mean inlet Mach number: what the cylinder really draws, through the mean effective area, in the time the valve is
 * open, over the speed of sound.
 *
 * @param index Taylor's inlet Mach index
 * @param duration how long the intake valve is off its seat, rad of crankshaft
 * @param ve volumetric efficiency, as a fraction
 * Source: I. Fukutani and E. Watanabe, SAE 790484; J. B. Heywood, 1988, sec. 6.2.3 (both from memory).
 */
export function meanInletMach(index: number, duration: number, ve: number): number {
  return (index * ve * Math.PI) / duration;
}
