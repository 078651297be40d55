import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { octane } from '../../src/units/quantity.ts';
import { dynamicRatio } from '../compression/dynamic-ratio.ts';
import { cautionEndHere } from './caution-end-here.ts';
import { cautionStartHere } from './caution-start-here.ts';
import { perOctane } from './practice.ts';
import { pumpOctane } from './pump-octane.ts';

export const practiceOctane = cell({
  id: 'practiceOctane',
  label: 'Octane that practice would ask for',
  short: 'Practice asks',
  note: 'The octane whose band has this ratio in its middle: the band moves by an eighth of a ratio for each number.',
  kind: scalar(octane),
  from: { pumpOctane, dynamicRatio, cautionStartHere, cautionEndHere },
  source: common('bands on the ratio from the seat closing'),
  formula: 'pumpOctane + (dynamicRatio − (cautionStartHere + cautionEndHere) / 2) / 0.125',
  compute: ({ pumpOctane, dynamicRatio, cautionStartHere, cautionEndHere }) =>
    pumpOctane + (dynamicRatio - (cautionStartHere + cautionEndHere) / 2) / perOctane,
  examples: [
    // Iron heads at sea level: 91 AKI has its band from 7.50 to 8.00, 93 from 7.75 to 8.25.
    {
      given: { pumpOctane: 91, dynamicRatio: 8, cautionStartHere: 7.5, cautionEndHere: 8 },
      gives: 93,
      within: 1e-12,
    },
    {
      given: { pumpOctane: 85, dynamicRatio: 7.25, cautionStartHere: 6.75, cautionEndHere: 7.25 },
      gives: 87,
      within: 1e-12,
    },
  ],
});
