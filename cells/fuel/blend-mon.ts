import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { blendOctane, ethanolMotorOctane } from '../../src/physics/fuel/blend.ts';
import { anderson, cite } from '../../src/references.ts';
import { octane } from '../../src/units/quantity.ts';
import { addedMoleFraction } from './added-mole-fraction.ts';
import { baseMon, blendInteraction } from './inputs.ts';

export const blendMon = cell({
  id: 'blendMon',
  label: 'Mixed fuel, motor octane',
  short: 'Mix MON',
  note: 'By molecules from the base and neat ethanol; used only when the fuel is mixed.',
  kind: scalar(octane),
  from: { addedMoleFraction, baseMon, blendInteraction },
  source: cite(anderson, 'eq. 1; ethanol’s own figure from memory'),
  formula: '(1 − addedMoleFraction) × baseMon + addedMoleFraction × ethanol’s + blendInteraction × x × (1 − x)',
  compute: ({ addedMoleFraction, baseMon, blendInteraction }) =>
    blendOctane(addedMoleFraction, baseMon, ethanolMotorOctane, blendInteraction),
});
