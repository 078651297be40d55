import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { angle, rotation } from '../../src/units/quantity.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { columnOf } from '../output/rows.ts';

export const sparkCurve = cell({
  id: 'sparkCurve',
  label: 'Spark by engine speed',
  note: 'What the engine runs, before top dead center.',
  kind: curve(rotation, angle, 'Engine speed'),
  from: { engineBySpeed },
  source: common('read off the cycle'),
  formula: 'spark of engineBySpeed',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, (row) => row.spark),
});
