import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { meanPressure, rotation } from '../../src/units/quantity.ts';
import { engineBySpeed } from './engine-by-speed.ts';
import { columnOf } from './rows.ts';

export const pumpingPressureCurve = cell({
  id: 'pumpingPressureCurve',
  label: 'Pumping mean pressure by engine speed',
  note: 'Work of the gas exchange; below zero it costs.',
  kind: curve(rotation, meanPressure, 'Engine speed'),
  from: { engineBySpeed },
  source: common('read off the cycle'),
  formula: 'work from bottom to bottom around the gas exchange / swept volume',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, (row) => row.pumpingPressure),
});
