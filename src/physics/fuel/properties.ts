import { ethanolMassShare, gasolineDensity, requireShare } from './mass-share.ts';

const btuPerPound = 2326; // J/kg, exact (international table Btu)
const poundPerGallon = 0.45359237 / 0.003785411784; // kg/m3, U.S. gallon

// U.S. Department of Energy, Alternative Fuels Data Center, fuel properties
const ethanol = {
  heatingValue: 11585 * btuPerPound, // lower
  latentHeat: 396 * btuPerPound, // at 60 F, older edition of the table
  density: 6.61 * poundPerGallon, // at 60 F, hence a little above the figure for 20 C
};
const gasoline = {
  heatingValue: 18676 * btuPerPound, // lower
  latentHeat: 150 * btuPerPound, // at 60 F, printed as approximate
};

/**
 * Lower heating value of gasoline with ethanol, J/kg of liquid.
 *
 * @param share of ethanol by volume, 0 to 1
 * @throws RangeError when the share is outside 0 to 1
 * Source: U.S. DOE Alternative Fuels Data Center; heating values add by mass.
 */
export function heatingValue(share: number): number {
  return byMass(share, gasoline.heatingValue, ethanol.heatingValue);
}

/**
 * Density of gasoline with ethanol, kg/m3, at 60 F; the small change of volume on mixing is left out.
 *
 * @param share of ethanol by volume, 0 to 1
 * @throws RangeError when the share is outside 0 to 1
 * Source: ethanol, U.S. DOE Alternative Fuels Data Center; gasoline, middle of Heywood Table D.4 (from memory).
 */
export function density(share: number): number {
  requireShare(share);
  return (1 - share) * gasolineDensity + share * ethanol.density;
}

/**
 * Heat that evaporates gasoline with ethanol, J/kg of liquid, at 60 F; the heat of mixing is left out.
 *
 * @param share of ethanol by volume, 0 to 1
 * @throws RangeError when the share is outside 0 to 1
 * Source: U.S. DOE Alternative Fuels Data Center; latent heats add by mass.
 */
export function latentHeat(share: number): number {
  return byMass(share, gasoline.latentHeat, ethanol.latentHeat);
}

function byMass(share: number, ofGasoline: number, ofEthanol: number): number {
  const mass = ethanolMassShare(share, ethanol.density);
  return (1 - mass) * ofGasoline + mass * ofEthanol;
}
