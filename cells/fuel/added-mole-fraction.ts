import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { addedMoleFraction as physics } from '../../src/physics/fuel/blend.ts';
import { anderson, cite } from '../../src/references.ts';
import { share } from '../../src/units/quantity.ts';
import { baseEthanol, ethanolAdded } from './inputs.ts';

export const addedMoleFraction = cell({
  id: 'addedMoleFraction',
  label: 'Ethanol added, by molecules',
  note: 'Octane follows the count of molecules, and ethanol’s are light: a little by volume is much by count.',
  kind: scalar(share),
  from: { baseEthanol, ethanolAdded },
  source: cite(anderson, 'method'),
  formula: 'moles of ethanolAdded / all moles, the base counted with its own ethanol',
  compute: ({ baseEthanol, ethanolAdded }) => physics(ethanolAdded, baseEthanol),
});
