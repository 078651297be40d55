import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { blendOctane, ethanolResearchOctane } from '../../src/physics/fuel/blend.ts';
import { anderson, cite } from '../../src/references.ts';
import { octane } from '../../src/units/quantity.ts';
import { addedMoleFraction } from './added-mole-fraction.ts';
import { baseRon, blendInteraction } from './inputs.ts';

export const blendRon = cell({
  id: 'blendRon',
  label: 'Mixed fuel, research octane',
  short: 'Mix RON',
  note: 'By molecules from the base and neat ethanol; used only when the fuel is mixed.',
  kind: scalar(octane),
  from: { addedMoleFraction, baseRon, blendInteraction },
  source: cite(anderson, 'eq. 1; ethanol’s own figure from memory'),
  formula: '(1 − addedMoleFraction) × baseRon + addedMoleFraction × ethanol’s + blendInteraction × x × (1 − x)',
  compute: ({ addedMoleFraction, baseRon, blendInteraction }) =>
    blendOctane(addedMoleFraction, baseRon, ethanolResearchOctane, blendInteraction),
});
