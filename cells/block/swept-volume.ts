import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { cylinderVolume } from '../../src/physics/volumes.ts';
import { cite, heywood } from '../../src/references.ts';
import { chamberVolume } from '../../src/units/quantity.ts';
import { bore } from './inputs.ts';
import { pistonStroke } from './piston-stroke.ts';

export const sweptVolume = cell({
  id: 'sweptVolume',
  label: 'Swept volume, one cylinder',
  short: 'Swept',
  note: 'What one piston displaces from bottom to top.',
  kind: scalar(chamberVolume),
  from: { bore, pistonStroke },
  source: cite(heywood, 'sec. 2.2'),
  formula: 'π / 4 × bore² × pistonStroke',
  compute: ({ bore, pistonStroke }) => cylinderVolume(bore, pistonStroke),
  examples: [{ given: { bore: 0.1, pistonStroke: 0.1 }, gives: 7.853981633974e-4, within: 1e-13 }],
});
