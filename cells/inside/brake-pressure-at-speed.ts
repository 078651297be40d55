import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { meanPressure } from '../../src/units/quantity.ts';
import { engineAtSpeed } from './engine-at-speed.ts';

export const brakePressureAtSpeed = cell({
  id: 'brakePressureAtSpeed',
  label: 'Brake mean pressure',
  short: 'BMEP here',
  note: 'Net work less friction, over the swept volume.',
  kind: scalar(meanPressure),
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'net work in engineAtSpeed over the swept volume, less friction',
  compute: ({ engineAtSpeed }) => engineAtSpeed.brakePressure,
});
