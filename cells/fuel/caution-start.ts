import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { fuelGrade, headMaterial } from './inputs.ts';
import { knownBand } from './practice.ts';
import { pumpOctane } from './pump-octane.ts';

export const cautionStart = cell({
  id: 'cautionStart',
  label: 'Caution begins, at sea level',
  short: 'Begins',
  note: 'Under this ratio the fuel is comfortable. Common practice, and yours to move: hold it.',
  kind: scalar(ratio),
  from: { fuelGrade, pumpOctane, headMaterial },
  source: common('bands on the ratio from the seat closing'),
  formula: '6.75 + 0.125 × (pumpOctane − 85), 0.25 more with aluminum heads; flex 9.25',
  slider: [6, 11],
  compute: ({ fuelGrade, pumpOctane, headMaterial }) => knownBand(fuelGrade, pumpOctane, headMaterial).start,
  examples: [
    { given: { fuelGrade: '91', pumpOctane: 91, headMaterial: 'iron' }, gives: 7.5, within: 1e-12 },
    { given: { fuelGrade: '91', pumpOctane: 91, headMaterial: 'aluminum' }, gives: 7.75, within: 1e-12 },
    { given: { fuelGrade: 'flex', pumpOctane: 94, headMaterial: 'iron' }, gives: 9.25, within: 1e-12 },
  ],
});
