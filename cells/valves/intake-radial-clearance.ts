import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { intakeReliefDiameter, intakeValveDiameter } from './inputs.ts';

export const intakeRadialClearance = cell({
  id: 'intakeRadialClearance',
  label: 'Intake valve to the wall of its relief',
  short: 'Intake radial',
  note: 'Half the difference of the diameters: for a valve that stands in the middle of its relief.',
  kind: scalar(gap),
  from: { intakeReliefDiameter, intakeValveDiameter },
  source: common('concentric circles'),
  formula: '(intakeReliefDiameter − intakeValveDiameter) / 2',
  compute: ({ intakeReliefDiameter, intakeValveDiameter }) => (intakeReliefDiameter - intakeValveDiameter) / 2,
  examples: [{ given: { intakeReliefDiameter: 0.055, intakeValveDiameter: 0.051 }, gives: 0.002, within: 1e-12 }],
});
