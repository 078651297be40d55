import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { rotation, share } from '../../src/units/quantity.ts';
import { engineBySpeed } from './engine-by-speed.ts';
import { columnOf } from './rows.ts';

export const volumetricEfficiencyCurve = cell({
  id: 'volumetricEfficiencyCurve',
  label: 'Volumetric efficiency by engine speed',
  note: 'Dry air caught, against a swept volume of the dry air outside.',
  kind: curve(rotation, share, 'Engine speed'),
  from: { engineBySpeed },
  source: common('read off the cycle'),
  formula: 'dry air trapped in engineBySpeed over swept volume × its density outside',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, (row) => row.volumetricEfficiency),
});
