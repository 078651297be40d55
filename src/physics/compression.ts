/**
 * Dynamic compression ratio: what is trapped when the intake closes, over what is left at top dead center.
 *
 * @param trapped volume above the piston at the closing, clearance volume included, m3
 * @param clearance volume above the piston at top dead center, m3
 * @throws RangeError when no clearance volume is left
 */
export function dynamicRatio(trapped: number, clearance: number): number {
  if (!(clearance > 0)) throw new RangeError('No volume is left above the piston at top dead center.');
  return trapped / clearance;
}

/**
 * Gauge pressure at the end of a cranking stroke, Pa above the air outside: a polytropic compression. The exponent
 * stands for heat and ring losses at cranking speed; it is fitted to gauge readings and is no property of air.
 *
 * @param stationPressure pressure of the air outside, Pa absolute
 * @param ratio dynamic compression ratio
 * @param exponent polytropic exponent
 */
export function crankingGaugePressure(stationPressure: number, ratio: number, exponent: number): number {
  return stationPressure * (ratio ** exponent - 1);
}
