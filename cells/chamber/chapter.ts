import { chapter as declare, figure } from '../../src/graph/chapter.ts';
import { chamberSays } from './chamber-says.ts';
import { clearanceVolume } from './clearance-volume.ts';
import { creviceVolume } from './crevice-volume.ts';
import { deckClearance } from './deck-clearance.ts';
import { deckVolume } from './deck-volume.ts';
import { gasketVolume } from './gasket-volume.ts';
import {
  chamberDeckArea,
  chamberVolume,
  compressionHeight,
  crownVolume,
  deckHeight,
  gasketBore,
  gasketThickness,
  milling,
  squishAluminum,
  squishClose,
  squishContact,
  squishOpen,
  topLandClearance,
  topLandHeight,
} from './inputs.ts';
import { milledVolume } from './milled-volume.ts';
import { squishGap } from './squish-gap.ts';
import { squishVerdict } from './squish-verdict.ts';
import { staticRatioAsQuoted } from './static-ratio-as-quoted.ts';
import { staticRatio } from './static-ratio.ts';

export const chapter = declare({
  id: 'chamber',
  number: 2,
  title: 'Chamber',
  sentence: 'Everything left above the piston at top dead center. Small volumes, all in the denominator.',
  fields: [
    chamberVolume,
    gasketThickness,
    gasketBore,
    crownVolume,
    deckClearance,
    deckHeight,
    compressionHeight,
    milling,
    chamberDeckArea,
    topLandHeight,
    topLandClearance,
    squishContact,
    squishClose,
    squishOpen,
    squishAluminum,
  ],
  answers: [
    clearanceVolume,
    gasketVolume,
    deckVolume,
    creviceVolume,
    milledVolume,
    staticRatio,
    staticRatioAsQuoted,
    squishGap,
    squishVerdict,
  ],
  caution: 'Measure chamber, deck and gasket on the real parts. A chamber is seldom the size it was cast to.',
  says: chamberSays,
  figures: [
    figure({
      id: 'figure-stack',
      form: 'stack',
      caption: 'Where the clearance volume comes from. Every part of it stands in the denominator of both ratios.',
      from: { clearanceVolume, chamberVolume, milledVolume, gasketVolume, deckVolume, crownVolume, creviceVolume },
    }),
  ],
});
