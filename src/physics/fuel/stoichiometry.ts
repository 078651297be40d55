import { ethanolDensity20C, ethanolMassShare } from './mass-share.ts';

/**
 * Mass of air that burns one unit mass of a fuel CHyOz completely, kg/kg.
 *
 * @param hydrogenPerCarbon y, atoms
 * @param oxygenPerCarbon z, atoms
 * @throws RangeError when an atom count is negative or the fuel already holds all its oxygen
 * Source: Heywood, eq. 3.6 (from memory): air as 3.773 N2 to one O2.
 */
export function stoichiometricRatio(hydrogenPerCarbon: number, oxygenPerCarbon: number): number {
  if (!(hydrogenPerCarbon >= 0 && oxygenPerCarbon >= 0)) throw new RangeError('An atom count cannot be negative.');
  const oxygenNeeded = 4 + hydrogenPerCarbon - 2 * oxygenPerCarbon;
  if (!(oxygenNeeded > 0)) throw new RangeError('This fuel holds all the oxygen it needs.');
  return (34.56 * oxygenNeeded) / (12.011 + 1.008 * hydrogenPerCarbon + 16 * oxygenPerCarbon); // Heywood eq. 3.6
}

const gasoline = stoichiometricRatio(1.87, 0); // CH1.87, Heywood Table D.4 (from memory)
const ethanol = stoichiometricRatio(3, 0.5); // C2H5OH

/**
 * Stoichiometric air-fuel ratio by mass of pump gasoline blended with ethanol.
 *
 * Air demands add by mass of fuel, so the volume share is turned into a mass share first.
 *
 * @param ethanolVolumeShare 0 to 1
 * @throws RangeError when the share is outside 0 to 1
 * Source: Heywood, eq. 3.6 and Table D.4 (from memory).
 */
export function blendStoichiometricRatio(ethanolVolumeShare: number): number {
  const mass = ethanolMassShare(ethanolVolumeShare, ethanolDensity20C);
  return (1 - mass) * gasoline + mass * ethanol;
}
