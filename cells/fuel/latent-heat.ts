import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { latentHeat as physics } from '../../src/physics/fuel/properties.ts';
import { afdc, cite } from '../../src/references.ts';
import { latentHeat as quantity } from '../../src/units/quantity.ts';
import { fuelEthanol } from './fuel-ethanol.ts';

export const latentHeat = cell({
  id: 'latentHeat',
  label: 'Latent heat',
  note: 'What the fuel takes from the charge to turn to vapor; ethanol takes far more.',
  kind: scalar(quantity),
  from: { fuelEthanol },
  source: cite(afdc, 'older table, approximate for gasoline'),
  formula: 'both fuels’ figures, by mass',
  compute: ({ fuelEthanol }) => physics(fuelEthanol),
});
