import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { specificFuel } from '../../src/units/quantity.ts';
import { engineAtSpeed } from './engine-at-speed.ts';

export const specificFuelAtSpeed = cell({
  id: 'specificFuelAtSpeed',
  label: 'Brake specific fuel at the engine speed',
  short: 'BSFC here',
  note: 'Fuel for the work that leaves the crankshaft.',
  kind: scalar(specificFuel),
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'fuel flow / power of engineAtSpeed',
  compute: ({ engineAtSpeed }) => engineAtSpeed.fuelFlow / Math.max(engineAtSpeed.power, 1),
});
