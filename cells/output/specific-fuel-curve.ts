import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { rotation, specificFuel } from '../../src/units/quantity.ts';
import { engineBySpeed } from './engine-by-speed.ts';
import { columnOf } from './rows.ts';

export const specificFuelCurve = cell({
  id: 'specificFuelCurve',
  label: 'Brake specific fuel by engine speed',
  note: 'Fuel for the work that leaves the crankshaft.',
  kind: curve(rotation, specificFuel, 'Engine speed'),
  from: { engineBySpeed },
  source: common('read off the cycle'),
  formula: 'fuel flow / power of engineBySpeed',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, (row) => row.fuelFlow / Math.max(row.power, 1)),
});
