import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { compressionRatio } from '../../src/physics/volumes.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { sweptVolume } from '../block/swept-volume.ts';
import { clearanceVolume } from './clearance-volume.ts';
import { creviceVolume } from './crevice-volume.ts';

export const staticRatioAsQuoted = cell({
  id: 'staticRatioAsQuoted',
  label: 'Static ratio as piston makers quote it',
  short: 'As quoted',
  note: 'Without the top land crevice: the figure to hold against a catalog.',
  kind: scalar(ratio),
  from: { sweptVolume, clearanceVolume, creviceVolume },
  source: common('piston makers leave the crevice out'),
  formula: '(sweptVolume + clearanceVolume − creviceVolume) / (clearanceVolume − creviceVolume)',
  slider: [7, 14],
  compute: ({ sweptVolume, clearanceVolume, creviceVolume }) =>
    compressionRatio(sweptVolume, clearanceVolume - creviceVolume),
  examples: [{ given: { sweptVolume: 9e-4, clearanceVolume: 1.01e-4, creviceVolume: 1e-6 }, gives: 10, within: 1e-12 }],
});
