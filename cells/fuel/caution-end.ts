import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { fuelGrade, headMaterial } from './inputs.ts';
import { knownBand } from './practice.ts';
import { pumpOctane } from './pump-octane.ts';

export const cautionEnd = cell({
  id: 'cautionEnd',
  label: 'Caution ends, at sea level',
  short: 'Ends',
  note: 'Over this ratio it is beyond the fuel. Common practice, and yours to move: hold it.',
  kind: scalar(ratio),
  from: { fuelGrade, pumpOctane, headMaterial },
  source: common('bands on the ratio from the seat closing'),
  formula: '7.25 + 0.125 × (pumpOctane − 85), 0.50 more with aluminum heads; flex 9.75',
  slider: [6, 11],
  compute: ({ fuelGrade, pumpOctane, headMaterial }) => knownBand(fuelGrade, pumpOctane, headMaterial).end,
  examples: [
    { given: { fuelGrade: '91', pumpOctane: 91, headMaterial: 'iron' }, gives: 8, within: 1e-12 },
    { given: { fuelGrade: '91', pumpOctane: 91, headMaterial: 'aluminum' }, gives: 8.5, within: 1e-12 },
    { given: { fuelGrade: 'flex', pumpOctane: 94, headMaterial: 'iron' }, gives: 9.75, within: 1e-12 },
  ],
});
