import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { meanPressure } from '../../src/units/quantity.ts';
import { engineAtSpeed } from './engine-at-speed.ts';

export const pumpingPressureAtSpeed = cell({
  id: 'pumpingPressureAtSpeed',
  label: 'Pumping mean pressure',
  short: 'Pumping',
  note: 'The gas exchange’s part of the net work; below zero it costs.',
  kind: scalar(meanPressure),
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'work of the gas exchange in engineAtSpeed / swept volume',
  compute: ({ engineAtSpeed }) => engineAtSpeed.pumpingPressure,
});
