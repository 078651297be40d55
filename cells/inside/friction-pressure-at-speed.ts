import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { meanPressure } from '../../src/units/quantity.ts';
import { engineAtSpeed } from './engine-at-speed.ts';

export const frictionPressureAtSpeed = cell({
  id: 'frictionPressureAtSpeed',
  label: 'Friction mean pressure',
  short: 'Friction',
  note: 'Rubbing parts and auxiliaries, in street trim the accessories too. No pumping: the cycle has that.',
  kind: scalar(meanPressure),
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'crankshaft, pistons, rings, valve train and auxiliaries of engineAtSpeed',
  compute: ({ engineAtSpeed }) => engineAtSpeed.frictionPressure,
});
