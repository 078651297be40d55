import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { meanPressure, rotation } from '../../src/units/quantity.ts';
import { engineBySpeed } from './engine-by-speed.ts';
import { columnOf } from './rows.ts';

export const brakePressureCurve = cell({
  id: 'brakePressureCurve',
  label: 'Brake mean pressure by engine speed',
  note: 'Torque as a pressure over the displacement: engines of any size side by side.',
  kind: curve(rotation, meanPressure, 'Engine speed'),
  from: { engineBySpeed },
  source: common('read off the cycle'),
  formula: '4π × torque of engineBySpeed / the whole swept volume',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, (row) => row.brakePressure),
});
