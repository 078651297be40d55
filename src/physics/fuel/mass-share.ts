/** Density of ethanol at 20 C, kg/m3 (the figure of J. E. Anderson et al., SAE 2010-01-2094). */
export const ethanolDensity20C = 789;

/** Density of pump gasoline, kg/m3: within the 720 to 780 of Heywood, Table D.4 (from memory). */
export const gasolineDensity = 745;

/**
 * Mass share of ethanol in a blend given by volume; the small change of volume on mixing is left out.
 *
 * @param volumeShare of ethanol, 0 to 1
 * @param ethanolDensity kg/m3
 * @throws RangeError when the share is outside 0 to 1
 * Source: definition.
 */
export function ethanolMassShare(volumeShare: number, ethanolDensity: number): number {
  requireShare(volumeShare);
  const ethanol = volumeShare * ethanolDensity;
  return ethanol / (ethanol + (1 - volumeShare) * gasolineDensity);
}

/**
 * Stops a share that is not one.
 *
 * @param share 0 to 1
 * @throws RangeError outside that range
 */
export function requireShare(share: number): void {
  if (!(share >= 0 && share <= 1)) throw new RangeError('The ethanol share must lie from 0 to 100 %.');
}
