import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { fuelFlow, rotation } from '../../src/units/quantity.ts';
import { engineBySpeed } from './engine-by-speed.ts';
import { columnOf } from './rows.ts';

export const fuelFlowCurve = cell({
  id: 'fuelFlowCurve',
  label: 'Fuel flow by engine speed',
  note: 'For the whole engine.',
  kind: curve(rotation, fuelFlow, 'Engine speed'),
  from: { engineBySpeed },
  source: common('read off the cycle'),
  formula: 'air through engineBySpeed × mixture over the stoichiometric ratio',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, (row) => row.fuelFlow),
});
