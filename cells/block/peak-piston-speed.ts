import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/linkage.ts';
import { cite, heywood } from '../../src/references.ts';
import { pistonSpeed } from '../../src/units/quantity.ts';
import { engineSpeed } from './inputs.ts';
import { linkage } from './linkage.ts';

export const peakPistonSpeed = cell({
  id: 'peakPistonSpeed',
  label: 'Peak piston speed',
  note: 'The fastest moment of the stroke, some 75 degrees from the top.',
  kind: scalar(pistonSpeed),
  from: { linkage, engineSpeed },
  source: cite(heywood, 'eq. 2.11, at its maximum'),
  formula: 'the largest slope of the piston’s place over crank angle × engineSpeed',
  compute: ({ linkage, engineSpeed }) => physics.peakPistonSpeed(linkage, engineSpeed),
});
