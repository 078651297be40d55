import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { exhaustReliefDiameter, exhaustValveDiameter } from './inputs.ts';

export const exhaustRadialClearance = cell({
  id: 'exhaustRadialClearance',
  label: 'Exhaust valve to the wall of its relief',
  short: 'Exhaust radial',
  note: 'Half the difference of the diameters: for a valve that stands in the middle of its relief.',
  kind: scalar(gap),
  from: { exhaustReliefDiameter, exhaustValveDiameter },
  source: common('concentric circles'),
  formula: '(exhaustReliefDiameter − exhaustValveDiameter) / 2',
  compute: ({ exhaustReliefDiameter, exhaustValveDiameter }) => (exhaustReliefDiameter - exhaustValveDiameter) / 2,
  examples: [{ given: { exhaustReliefDiameter: 0.055, exhaustValveDiameter: 0.051 }, gives: 0.002, within: 1e-12 }],
});
