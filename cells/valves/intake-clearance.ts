import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { inch, si } from '../../src/units/unit.ts';
import { intakeNearest } from './intake-nearest.ts';

export const intakeClearance = cell({
  id: 'intakeClearance',
  label: 'Intake valve to piston, least',
  short: 'Intake clearance',
  note: 'Cold and static: rods stretch and valves float, and the margin is for them. Clay or light checking springs on the real engine decide.',
  kind: scalar(gap),
  from: { intakeNearest },
  source: common('plane geometry of piston and valve'),
  formula: 'the least gap found',
  slider: [0, si(0.3, inch)],
  compute: ({ intakeNearest }) => intakeNearest.clearance,
});
