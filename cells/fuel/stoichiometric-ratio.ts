import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { blendStoichiometricRatio } from '../../src/physics/fuel/stoichiometry.ts';
import { heywood, cite } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { fuelEthanol } from './fuel-ethanol.ts';

export const stoichiometricRatio = cell({
  id: 'stoichiometricRatio',
  label: 'Stoichiometric air-fuel ratio',
  note: 'Air that burns a pound of this fuel to the end; ethanol brings oxygen of its own and needs less.',
  kind: scalar(ratio),
  from: { fuelEthanol },
  source: cite(heywood, 'eq. 3.6; gasoline as CH1.87'),
  formula: '34.56 × (4 + y − 2 z) / (12.011 + 1.008 y + 16 z) of both, by mass',
  compute: ({ fuelEthanol }) => blendStoichiometricRatio(fuelEthanol),
});
