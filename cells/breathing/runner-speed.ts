import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/flow/runner.ts';
import { common } from '../../src/references.ts';
import { gasSpeed } from '../../src/units/quantity.ts';
import { bore } from '../block/inputs.ts';
import { meanPistonSpeed } from '../block/mean-piston-speed.ts';
import { runnerDiameter } from './inputs.ts';

export const runnerSpeed = cell({
  id: 'runnerSpeed',
  label: 'Mean speed in the runner',
  short: 'Runner speed',
  note: 'While the piston draws, as if the air followed it at once, at the engine speed of the first chapter.',
  kind: scalar(gasSpeed),
  from: { bore, runnerDiameter, meanPistonSpeed },
  source: common('what goes into the cylinder comes through the runner'),
  formula: 'meanPistonSpeed × (bore / runnerDiameter)²',
  compute: ({ bore, runnerDiameter, meanPistonSpeed }) => physics.runnerSpeed(bore, runnerDiameter, meanPistonSpeed),
  examples: [{ given: { bore: 0.1, runnerDiameter: 0.05, meanPistonSpeed: 15 }, gives: 60, within: 1e-12 }],
});
