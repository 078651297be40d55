import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { meanPressure, rotation } from '../../src/units/quantity.ts';
import { engineBySpeed } from './engine-by-speed.ts';
import { columnOf } from './rows.ts';

export const frictionPressureCurve = cell({
  id: 'frictionPressureCurve',
  label: 'Friction mean pressure by engine speed',
  note: 'Rubbing parts and auxiliaries, in street trim the accessories too; pumping is counted apart.',
  kind: curve(rotation, meanPressure, 'Engine speed'),
  from: { engineBySpeed },
  source: common('read off the cycle'),
  formula: 'crankshaft, pistons, rings, valve train and auxiliaries of engineBySpeed',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, (row) => row.frictionPressure),
});
