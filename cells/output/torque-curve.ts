import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { engineTorque, rotation } from '../../src/units/quantity.ts';
import { engineBySpeed } from './engine-by-speed.ts';
import { columnOf } from './rows.ts';

export const torqueCurve = cell({
  id: 'torqueCurve',
  label: 'Torque by engine speed',
  note: 'What the crankshaft gives, full throttle, each speed held.',
  kind: curve(rotation, engineTorque, 'Engine speed'),
  from: { engineBySpeed },
  source: common('read off the cycle'),
  formula: 'torque of engineBySpeed',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, (row) => row.torque),
});
