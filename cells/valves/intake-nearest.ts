import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { type Clearance, smallestClearance } from '../../src/physics/valve/clearance.ts';
import { common } from '../../src/references.ts';
import { intakeAbove, intakeTrain } from './intake-above.ts';

export const intakeNearest = cell({
  id: 'intakeNearest',
  label: 'Intake valve, nearest to the piston',
  note: 'Where the gap is least around the top of the exhaust stroke.',
  kind: structure<Clearance>(),
  from: intakeTrain,
  mayLack: ['intakeLash'],
  source: common('plane geometry of piston and valve'),
  formula: 'the least of intakeRest + the piston’s depth × cos intakeValveAngle − lift',
  compute: (now) => smallestClearance(intakeAbove(now)),
});
