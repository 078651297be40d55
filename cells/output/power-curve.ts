import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { enginePower, rotation } from '../../src/units/quantity.ts';
import { engineBySpeed } from './engine-by-speed.ts';
import { columnOf } from './rows.ts';

export const powerCurve = cell({
  id: 'powerCurve',
  label: 'Power by engine speed',
  note: 'Torque times speed.',
  kind: curve(rotation, enginePower, 'Engine speed'),
  from: { engineBySpeed },
  source: common('read off the cycle'),
  formula: 'power of engineBySpeed',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, (row) => row.power),
});
