import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/volumes.ts';
import { common } from '../../src/references.ts';
import { chamberVolume as volume } from '../../src/units/quantity.ts';
import { cubicCentimeter, si } from '../../src/units/unit.ts';
import { bore } from '../block/inputs.ts';
import { topLandClearance, topLandHeight } from './inputs.ts';

export const creviceVolume = cell({
  id: 'creviceVolume',
  label: 'Top land crevice',
  short: 'Crevice',
  note: 'The thin ring around the top land, down to the first ring.',
  kind: scalar(volume),
  from: { bore, topLandHeight, topLandClearance },
  source: common('a ring of the land’s height'),
  formula: 'π / 4 × (bore² − (bore − topLandClearance)²) × topLandHeight',
  slider: [0, si(4, cubicCentimeter)],
  compute: ({ bore, topLandHeight, topLandClearance }) => physics.creviceVolume(bore, topLandHeight, topLandClearance),
});
