import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { heatingValue as physics } from '../../src/physics/fuel/properties.ts';
import { afdc, cite } from '../../src/references.ts';
import { heatingValue as quantity } from '../../src/units/quantity.ts';
import { fuelEthanol } from './fuel-ethanol.ts';

export const heatingValue = cell({
  id: 'heatingValue',
  label: 'Heating value, lower',
  note: 'Heat in a kilogram, water left as steam.',
  kind: scalar(quantity),
  from: { fuelEthanol },
  source: cite(afdc, 'table'),
  formula: 'both fuels’ figures, by mass',
  compute: ({ fuelEthanol }) => physics(fuelEthanol),
});
