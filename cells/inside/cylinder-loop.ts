import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { engineAtSpeed } from './engine-at-speed.ts';

export const cylinderLoop = cell({
  id: 'cylinderLoop',
  label: 'Pressure and volume',
  note: 'One cycle by crank degree.',
  kind: structure<{ readonly volume: readonly number[]; readonly pressure: readonly number[] }>(),
  from: { engineAtSpeed },
  source: common('read off the cycle'),
  formula: 'pressure and volume of engineAtSpeed',
  compute: ({ engineAtSpeed }) => engineAtSpeed.loop,
});
