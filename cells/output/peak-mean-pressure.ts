import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { meanEffectivePressure } from '../../src/physics/performance.ts';
import { cite, heywood } from '../../src/references.ts';
import { meanPressure } from '../../src/units/quantity.ts';
import { displacement } from '../block/displacement.ts';
import { peakTorque } from './peak-torque.ts';

export const peakMeanPressure = cell({
  id: 'peakMeanPressure',
  label: 'Brake mean pressure at peak torque',
  short: 'BMEP at peak',
  note: 'Torque as a pressure over the displacement: engines of any size side by side.',
  kind: scalar(meanPressure),
  from: { peakTorque, displacement },
  source: cite(heywood, 'eq. 2.20'),
  formula: '4π × peakTorque / displacement',
  compute: ({ peakTorque, displacement }) => meanEffectivePressure(peakTorque, displacement),
});
