import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { fuelFlow } from '../../src/units/quantity.ts';
import { engineAtSpeed } from './engine-at-speed.ts';

export const fuelFlowAtSpeed = cell({
  id: 'fuelFlowAtSpeed',
  label: 'Fuel flow at the engine speed',
  short: 'Fuel flow',
  note: 'For the whole engine.',
  kind: scalar(fuelFlow),
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'fuel of engineAtSpeed',
  compute: ({ engineAtSpeed }) => engineAtSpeed.fuelFlow,
});
