import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { cylinderVolume } from '../../src/physics/volumes.ts';
import { cite, heywood } from '../../src/references.ts';
import { chamberVolume } from '../../src/units/quantity.ts';
import { bore } from '../block/inputs.ts';
import { clearanceVolume } from '../chamber/clearance-volume.ts';
import { effectiveStroke } from './effective-stroke.ts';

export const trappedVolume = cell({
  id: 'trappedVolume',
  label: 'Trapped volume',
  short: 'Trapped',
  note: 'What the shut intake valve has caught above the piston.',
  kind: scalar(chamberVolume),
  from: { bore, effectiveStroke, clearanceVolume },
  source: cite(heywood, 'eq. 2.4, at the closing'),
  formula: 'clearanceVolume + π / 4 × bore² × effectiveStroke',
  compute: ({ bore, effectiveStroke, clearanceVolume }) => clearanceVolume + cylinderVolume(bore, effectiveStroke),
  examples: [
    { given: { bore: 0.1, effectiveStroke: 0.1, clearanceVolume: 1e-4 }, gives: 8.853981633974e-4, within: 1e-13 },
  ],
});
