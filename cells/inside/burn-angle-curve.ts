import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { angle, rotation } from '../../src/units/quantity.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { columnOf } from '../output/rows.ts';

export const burnAngleCurve = cell({
  id: 'burnAngleCurve',
  label: 'Crank turned from spark to half burned, by engine speed',
  note: 'Burnt gas left in the charge and thin air slow the flame: it needs more spark then.',
  kind: curve(rotation, angle, 'Engine speed'),
  from: { engineBySpeed },
  source: common('read off the cycle'),
  formula: 'spark before top + half burned after top, of engineBySpeed',
  compute: ({ engineBySpeed }) =>
    columnOf(engineBySpeed, ({ spark, halfBurned }) => (halfBurned === null ? null : spark + halfBurned)),
});
