import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { meanPressure } from '../../src/units/quantity.ts';
import { engineAtSpeed } from './engine-at-speed.ts';

export const indicatedPressureAtSpeed = cell({
  id: 'indicatedPressureAtSpeed',
  label: 'Net indicated mean pressure',
  short: 'Net IMEP',
  note: 'Work on the piston over the whole cycle, pumping in it.',
  kind: scalar(meanPressure),
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'work on the piston in engineAtSpeed / swept volume',
  compute: ({ engineAtSpeed }) => engineAtSpeed.indicatedPressure,
});
