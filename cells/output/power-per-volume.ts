import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/performance.ts';
import { common } from '../../src/references.ts';
import { powerDensity } from '../../src/units/quantity.ts';
import { displacement } from '../block/displacement.ts';
import { peakPower } from './peak-power.ts';

export const powerPerVolume = cell({
  id: 'powerPerVolume',
  label: 'Peak power over displacement',
  short: 'Per displacement',
  note: 'In this air: thin air takes from it.',
  kind: scalar(powerDensity),
  from: { peakPower, displacement },
  source: common('arithmetic'),
  formula: 'peakPower / displacement',
  compute: ({ peakPower, displacement }) => physics.powerPerVolume(peakPower, displacement),
});
