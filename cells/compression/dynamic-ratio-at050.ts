import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { dynamicRatio } from '../../src/physics/compression.ts';
import { pistonDrop } from '../../src/physics/linkage.ts';
import { cylinderVolume } from '../../src/physics/volumes.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { bore } from '../block/inputs.ts';
import { linkage } from '../block/linkage.ts';
import { intakeClosing050 } from '../cam/intake-closing050.ts';
import { clearanceVolume } from '../chamber/clearance-volume.ts';

export const dynamicRatioAt050 = cell({
  id: 'dynamicRatioAt050',
  label: 'Dynamic ratio from 0.050 in',
  note: 'Reads high: at 0.050 in the valve is still well open. For talking to a shop that quotes it; it has its own limits.',
  kind: scalar(ratio),
  from: { bore, linkage, clearanceVolume, intakeClosing050 },
  source: common('shops that quote a closing at 0.050 in'),
  formula: 'the same, from intakeClosing050',
  slider: [6, 11],
  compute: ({ bore, linkage, clearanceVolume, intakeClosing050 }) =>
    dynamicRatio(
      clearanceVolume + cylinderVolume(bore, pistonDrop(linkage, Math.PI + intakeClosing050)),
      clearanceVolume,
    ),
});
