import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { octane } from '../../src/units/quantity.ts';
import { pumpOctane } from '../fuel/pump-octane.ts';
import { octaneError } from './octane-error.ts';
import { octaneRequirement } from './octane-requirement.ts';

export const octaneMargin = cell({
  id: 'octaneMargin',
  label: 'Octane to spare',
  short: 'Margin',
  note: 'What the pump has over what the engine asks for; below zero, knock is due. Both are read as AKI, though the formula cannot tell research from motor octane.',
  kind: scalar(octane),
  from: { pumpOctane, octaneRequirement },
  source: common('arithmetic'),
  formula: 'pumpOctane − octaneRequirement',
  modelError: octaneError,
  compute: ({ pumpOctane, octaneRequirement }) => pumpOctane - octaneRequirement,
  examples: [{ given: { pumpOctane: 91, octaneRequirement: 93.5 }, gives: -2.5, within: 1e-12 }],
});
