import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { density } from '../../src/physics/fuel/properties.ts';
import { afdc, cite } from '../../src/references.ts';
import { liquidDensity } from '../../src/units/quantity.ts';
import { fuelEthanol } from './fuel-ethanol.ts';

export const fuelDensity = cell({
  id: 'fuelDensity',
  label: 'Fuel density',
  note: 'At 60 °F.',
  kind: scalar(liquidDensity),
  from: { fuelEthanol },
  source: cite(afdc, 'table'),
  formula: 'both fuels’ figures, by volume',
  compute: ({ fuelEthanol }) => density(fuelEthanol),
});
