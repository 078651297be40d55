import { ethanolDensity20C, gasolineDensity, requireShare } from './mass-share.ts';

/** Research octane number of neat ethanol, as Anderson et al. use it (from memory; DOE prints 108). */
export const ethanolResearchOctane = 109;

/** Motor octane number of neat ethanol, as Anderson et al. use it (from memory; DOE prints 92). */
export const ethanolMotorOctane = 90;

/** What `ethanolMoleFraction` may be told about the two liquids. */
interface BlendLiquids {
  /** kg/m3 */
  readonly ethanolDensity?: number;
  /** kg/m3 */
  readonly gasolineDensity?: number;
  /** mean molar mass of the gasoline, kg/mol */
  readonly gasolineMolarMass?: number;
}

const ethanolMolarMass = 0.04607; // kg/mol

/**
 * Mole fraction of ethanol in a blend given by volume. Ethanol's molecules are light: 10 % by volume is 21 % by mole.
 *
 * @param volumeShare of ethanol, 0 to 1
 * @param liquids densities and the gasoline's molar mass, where they differ from 789 and 745 kg/m3 and 0.105 kg/mol
 * @throws RangeError when the share is outside 0 to 1 or a property is not above zero
 * Source: J. E. Anderson et al., SAE 2010-01-2094.
 */
export function ethanolMoleFraction(volumeShare: number, liquids: BlendLiquids = {}): number {
  requireShare(volumeShare);
  const { ethanolDensity = ethanolDensity20C, gasolineDensity: base = gasolineDensity } = liquids;
  const { gasolineMolarMass = 0.105 } = liquids;
  if (!(ethanolDensity > 0 && base > 0 && gasolineMolarMass > 0)) {
    throw new RangeError('Densities and molar masses must be above zero.');
  }
  const ethanol = (volumeShare * ethanolDensity) / ethanolMolarMass;
  return ethanol / (ethanol + ((1 - volumeShare) * base) / gasolineMolarMass);
}

/**
 * Octane number of a blend, of the kind (research or motor) of the two numbers given.
 *
 * @param moleFraction of ethanol, 0 to 1
 * @param base octane number of the gasoline
 * @param ethanol octane number of the ethanol
 * @param interaction octane numbers that the mixture is better than the straight line, as Z in Z x (1 - x)
 * @throws RangeError when the fraction is outside 0 to 1
 * Source: J. E. Anderson and T. J. Wallington, Energy & Fuels, 2020.
 */
export function blendOctane(moleFraction: number, base: number, ethanol: number, interaction = 0): number {
  requireShare(moleFraction);
  const x = moleFraction;
  return (1 - x) * base + x * ethanol + interaction * x * (1 - x);
}

/**
 * Anti-knock index, the figure on a U.S. pump: the mean of research and motor octane number.
 *
 * @param ron research octane number
 * @param mon motor octane number
 * Source: the "(R+M)/2" posted on the pump.
 */
export function antiKnockIndex(ron: number, mon: number): number {
  return (ron + mon) / 2;
}

/**
 * Mole fraction of ethanol added to a base that already holds some, counting the base's own with the base: the posted
 * octane of the base is that of the whole base.
 *
 * @param added volume share of added ethanol in the finished blend, 0 to 1
 * @param inBase volume share of ethanol in the base, 0 to 1
 * @throws RangeError when a share is outside 0 to 1
 * Source: J. E. Anderson et al., SAE 2010-01-2094, applied to a base that is itself a blend.
 */
export function addedMoleFraction(added: number, inBase: number): number {
  const baseFraction = ethanolMoleFraction(inBase);
  const density = inBase * ethanolDensity20C + (1 - inBase) * gasolineDensity;
  const molarMass = baseFraction * ethanolMolarMass + (1 - baseFraction) * 0.105;
  return ethanolMoleFraction(added, { gasolineDensity: density, gasolineMolarMass: molarMass });
}
