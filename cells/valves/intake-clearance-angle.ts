import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { intakeNearest } from './intake-nearest.ts';

export const intakeClearanceAngle = cell({
  id: 'intakeClearanceAngle',
  label: 'Intake valve nearest at',
  note: 'Crank degrees after the top of the exhaust stroke; negative is before it.',
  kind: scalar(angle, { short: 'ATDC', words: 'after top dead center' }),
  from: { intakeNearest },
  source: common('plane geometry of piston and valve'),
  formula: 'where the least gap is',
  compute: ({ intakeNearest }) => intakeNearest.angle,
});
