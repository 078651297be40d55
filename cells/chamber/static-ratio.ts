import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { compressionRatio } from '../../src/physics/volumes.ts';
import { cite, heywood } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { sweptVolume } from '../block/swept-volume.ts';
import { clearanceVolume } from './clearance-volume.ts';

export const staticRatio = cell({
  id: 'staticRatio',
  label: 'Static compression ratio',
  short: 'Static ratio',
  note: 'Volume at the bottom over volume at the top, as if the valves never moved.',
  kind: scalar(ratio),
  from: { sweptVolume, clearanceVolume },
  source: cite(heywood, 'eq. 2.1'),
  formula: '(sweptVolume + clearanceVolume) / clearanceVolume',
  slider: [7, 14],
  compute: ({ sweptVolume, clearanceVolume }) => compressionRatio(sweptVolume, clearanceVolume),
  examples: [{ given: { sweptVolume: 9e-4, clearanceVolume: 1e-4 }, gives: 10, within: 1e-12 }],
});
