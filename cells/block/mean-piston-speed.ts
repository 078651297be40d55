import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/volumes.ts';
import { cite, heywood } from '../../src/references.ts';
import { pistonSpeed } from '../../src/units/quantity.ts';
import { engineSpeed, stroke } from './inputs.ts';

export const meanPistonSpeed = cell({
  id: 'meanPistonSpeed',
  label: 'Mean piston speed',
  note: 'Up and down once a turn: it ranks stress and breathing across engines of any size.',
  kind: scalar(pistonSpeed),
  from: { stroke, engineSpeed },
  source: cite(heywood, 'eq. 2.9'),
  formula: '2 × stroke × engineSpeed',
  compute: ({ stroke, engineSpeed }) => physics.meanPistonSpeed(stroke, engineSpeed),
  // Pulkrabek's square V6 at 3600 rpm, example 2-1 (from memory): 10.32 m/s.
  examples: [{ given: { stroke: 0.086, engineSpeed: 120 * Math.PI }, gives: 10.32, within: 1e-9 }],
});
