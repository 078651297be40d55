import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { rotation, share } from '../../src/units/quantity.ts';
import { engineBySpeed } from './engine-by-speed.ts';
import { columnOf } from './rows.ts';

export const residualCurve = cell({
  id: 'residualCurve',
  label: 'Burnt gas left, by engine speed',
  note: 'Share of the charge that has burned before, when the intake has closed.',
  kind: curve(rotation, share, 'Engine speed'),
  from: { engineBySpeed },
  source: common('read off the cycle'),
  formula: 'burnt share of the charge in engineBySpeed',
  compute: ({ engineBySpeed }) => columnOf(engineBySpeed, (row) => row.residual),
});
