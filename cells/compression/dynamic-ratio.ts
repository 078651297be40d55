import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/compression.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { clearanceVolume } from '../chamber/clearance-volume.ts';
import { trappedVolume } from './trapped-volume.ts';

export const dynamicRatio = cell({
  id: 'dynamicRatio',
  label: 'Dynamic compression ratio',
  short: 'Dynamic ratio',
  note: 'The volume above the piston when the intake valve shuts, over the volume left at the top.',
  kind: scalar(ratio),
  from: { trappedVolume, clearanceVolume },
  source: common('taking the seat closing as the start; the piston’s place is Heywood eq. 2.5'),
  formula: 'trappedVolume / clearanceVolume',
  slider: [6, 10],
  compute: ({ trappedVolume, clearanceVolume }) => physics.dynamicRatio(trappedVolume, clearanceVolume),
  examples: [{ given: { trappedVolume: 7e-4, clearanceVolume: 1e-4 }, gives: 7, within: 1e-12 }],
});
