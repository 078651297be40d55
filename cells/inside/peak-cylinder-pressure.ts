import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { gaugePressure } from '../../src/units/quantity.ts';
import { engineAtSpeed } from './engine-at-speed.ts';

export const peakCylinderPressure = cell({
  id: 'peakCylinderPressure',
  label: 'Highest cylinder pressure at the engine speed',
  short: 'Peak pressure',
  note: 'A mean cycle’s; single cycles go higher.',
  kind: scalar(gaugePressure),
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'the largest of the pressure in engineAtSpeed, over standard air',
  compute: ({ engineAtSpeed }) => engineAtSpeed.peakPressure - 101_325,
});
