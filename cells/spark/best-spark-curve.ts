import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { cite, heywood } from '../../src/references.ts';
import { angle, rotation } from '../../src/units/quantity.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { columnOf } from '../output/rows.ts';

export const bestSparkCurve = cell({
  id: 'bestSparkCurve',
  label: 'Best spark by engine speed',
  note: 'The least advance for most torque with what the cylinder has caught, whatever the fuel bears.',
  kind: curve(rotation, angle, 'Engine speed'),
  from: { engineBySpeed },
  source: cite(heywood, 'sec. 9.1'),
  formula: 'best spark of engineBySpeed',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, (row) => row.bestSpark),
});
