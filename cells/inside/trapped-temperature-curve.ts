import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { rotation, temperature } from '../../src/units/quantity.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { columnOf } from '../output/rows.ts';

export const trappedTemperatureCurve = cell({
  id: 'trappedTemperatureCurve',
  label: 'Charge temperature at the closing, by engine speed',
  note: 'Walls and burnt gas have warmed it by the time the intake valve shuts; the fuel feels it.',
  kind: curve(rotation, temperature, 'Engine speed'),
  from: { engineBySpeed },
  source: common('read off the cycle'),
  formula: 'temperature in engineBySpeed when the intake has closed',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, (row) => row.trappedTemperature),
});
