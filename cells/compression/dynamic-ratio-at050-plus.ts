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
import { closingAllowance } from './inputs.ts';

export const dynamicRatioAt050Plus = cell({
  id: 'dynamicRatioAt050Plus',
  label: 'Dynamic ratio from 0.050 in and the allowance',
  note: 'A guess at the seat from the 0.050 in figure, for cards that give no other.',
  kind: scalar(ratio),
  from: { bore, linkage, clearanceVolume, intakeClosing050, closingAllowance },
  source: common('shops that quote a closing at 0.050 in'),
  formula: 'the same, from intakeClosing050 + closingAllowance',
  slider: [6, 11],
  compute: ({ bore, linkage, clearanceVolume, intakeClosing050, closingAllowance }) =>
    dynamicRatio(
      clearanceVolume + cylinderVolume(bore, pistonDrop(linkage, Math.PI + intakeClosing050 + closingAllowance)),
      clearanceVolume,
    ),
});
