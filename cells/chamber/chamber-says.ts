import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import * as q from '../../src/units/quantity.ts';
import { clearanceVolume } from './clearance-volume.ts';
import { squishGap } from './squish-gap.ts';
import { staticRatio } from './static-ratio.ts';

export const chamberSays = cell({
  id: 'chamberSays',
  label: 'Chamber, in one line',
  note: 'What the chapter comes to, for when it is closed.',
  kind: remark,
  from: { clearanceVolume, staticRatio, squishGap },
  source: common('a summary'),
  formula: 'clearanceVolume, staticRatio, squishGap',
  compute: ({ clearanceVolume, staticRatio, squishGap }) =>
    phrase`${value(clearanceVolume, q.chamberVolume)} left at the top: ${value(staticRatio, q.ratio)} to 1, with a squish gap of ${value(squishGap, q.gap)}.`,
});
