/**
 * Mean speed of the gas in a runner while the piston draws, m/s, as if it followed the piston at once.
 *
 * @param bore m
 * @param runnerDiameter m
 * @param meanPistonSpeed m/s
 */
export function runnerSpeed(bore: number, runnerDiameter: number, meanPistonSpeed: number): number {
  return meanPistonSpeed * (bore / runnerDiameter) ** 2;
}
