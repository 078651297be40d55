import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/linkage.ts';
import { cite, heywood } from '../../src/references.ts';
import { acceleration } from '../../src/units/quantity.ts';
import { engineSpeed } from './inputs.ts';
import { linkage } from './linkage.ts';

export const peakPistonAcceleration = cell({
  id: 'peakPistonAcceleration',
  label: 'Peak piston acceleration',
  note: 'At the top, where the rod pulls the piston back down; it grows with the square of speed.',
  kind: scalar(acceleration),
  from: { linkage, engineSpeed },
  source: cite(heywood, 'eq. 2.11, differentiated'),
  formula: 'the largest curvature of the piston’s place over crank angle × engineSpeed²',
  compute: ({ linkage, engineSpeed }) => physics.peakPistonAcceleration(linkage, engineSpeed),
});
