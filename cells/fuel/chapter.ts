import { chapter as declare, figure, when } from '../../src/graph/chapter.ts';
import { fuelSays } from './fuel-says.ts';
import { dynamicRatio } from '../compression/dynamic-ratio.ts';
import { blendMon } from './blend-mon.ts';
import { blendRon } from './blend-ron.ts';
import { cautionEndHere } from './caution-end-here.ts';
import { cautionEndLow } from './caution-end-low.ts';
import { cautionEnd } from './caution-end.ts';
import { cautionStartHere } from './caution-start-here.ts';
import { cautionStartLow } from './caution-start-low.ts';
import { cautionStart } from './caution-start.ts';
import { designDayOctane } from './design-day-octane.ts';
import { octaneMargin } from '../spark/octane-margin.ts';
import { octaneRequirement } from '../spark/octane-requirement.ts';
import { fuelDensity } from './fuel-density.ts';
import { fuelDisagreement } from './fuel-disagreement.ts';
import { fuelEthanol } from './fuel-ethanol.ts';
import { fuelVerdictLow } from './fuel-verdict-low.ts';
import { fuelVerdict } from './fuel-verdict.ts';
import { heatingValue } from './heating-value.ts';
import {
  altitudeRelief,
  baseEthanol,
  baseMon,
  baseRon,
  blendInteraction,
  ethanolAdded,
  ethanolShare,
  fuelGrade,
  headMaterial,
  lowestAltitude,
} from './inputs.ts';
import { latentHeat } from './latent-heat.ts';
import { practiceOctane } from './practice-octane.ts';
import { pumpOctane } from './pump-octane.ts';
import { stoichiometricRatio } from './stoichiometric-ratio.ts';

export const chapter = declare({
  id: 'fuel',
  number: 6,
  title: 'Fuel',
  sentence: 'Whether the pump can feed it, here and wherever the road goes down.',
  fields: [
    fuelGrade,
    ...when(fuelGrade, ['85', '87', '89', '91', '93', 'flex'], ethanolShare),
    ...when(fuelGrade, ['mixed'], baseRon, baseMon, baseEthanol, ethanolAdded, blendInteraction),
    headMaterial,
    lowestAltitude,
    altitudeRelief,
    cautionStart,
    cautionEnd,
  ],
  answers: [
    fuelVerdict,
    fuelVerdictLow,
    fuelDisagreement,
    pumpOctane,
    practiceOctane,
    blendRon,
    blendMon,
    cautionStartHere,
    cautionEndHere,
    cautionStartLow,
    cautionEndLow,
    designDayOctane,
    fuelEthanol,
    stoichiometricRatio,
    heatingValue,
    fuelDensity,
    latentHeat,
  ],
  caution:
    'The band is common practice, not a promise. Alcohol fuels need compatible parts; what may be sold and burned on the road is local law.',
  says: fuelSays,
  figures: [
    figure({
      id: 'figure-scale',
      form: 'verdictScale',
      caption:
        'The verdict, twice. The bar on the mark is the ± from every tolerance given. The edges are common practice, and yours to move.',
      from: { fuelVerdict, fuelVerdictLow },
      plusMinus: dynamicRatio,
    }),
    figure({
      id: 'figure-margins',
      form: 'margins',
      caption:
        'Two opinions on the same fuel: practice, by the ratio alone, and the gas dynamics, by spark, heat and filling. Where they differ, a sentence among the answers says why.',
      from: { fuelVerdict, pumpOctane },
      later: { octaneMargin, octaneRequirement },
      plusMinus: dynamicRatio,
    }),
  ],
});
