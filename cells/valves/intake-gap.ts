import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { clearanceAt } from '../../src/physics/valve/clearance.ts';
import { common } from '../../src/references.ts';
import { angle, gap } from '../../src/units/quantity.ts';
import { intakeAbove, intakeTrain } from './intake-above.ts';
import { nearAngles } from './motion.ts';

export const intakeGap = cell({
  id: 'intakeGap',
  label: 'Intake valve to piston',
  note: 'The gap around the top of the exhaust stroke, degree by degree.',
  kind: curve(angle, gap),
  from: intakeTrain,
  mayLack: ['intakeLash'],
  source: common('plane geometry of piston and valve'),
  formula: 'intakeRest + the piston’s depth × cos intakeValveAngle − lift',
  compute: (now) => {
    const above = intakeAbove(now);
    return { x: nearAngles, y: nearAngles.map((a) => clearanceAt(above, a)) };
  },
});
