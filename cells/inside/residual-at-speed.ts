import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { share } from '../../src/units/quantity.ts';
import { engineAtSpeed } from './engine-at-speed.ts';

export const residualAtSpeed = cell({
  id: 'residualAtSpeed',
  label: 'Burnt gas left at the engine speed',
  short: 'Residual here',
  note: 'Share of the charge that has burned before.',
  kind: scalar(share),
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'burnt share of the charge in engineAtSpeed',
  compute: ({ engineAtSpeed }) => engineAtSpeed.residual,
});
