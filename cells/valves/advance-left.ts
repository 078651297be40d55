import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { turnLeft } from '../../src/physics/valve/margin.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { rodMaterial } from '../block/inputs.ts';
import { intakeAbove, intakeTrain } from './intake-above.ts';
import { clearanceAluminum, intakeMinimum } from './inputs.ts';
import { leastWanted } from './room.ts';

export const advanceLeft = cell({
  id: 'advanceLeft',
  label: 'Advance left before the intake valve is at its minimum',
  short: 'Advance left',
  note: 'Crank degrees earlier from where the cam stands now, looked at up to 60. Negative: it is under already, and the cam has to go back.',
  kind: scalar(angle),
  from: { ...intakeTrain, intakeMinimum, clearanceAluminum, rodMaterial },
  mayLack: ['intakeLash'],
  source: common('the same geometry, solved for the cam’s place'),
  formula: 'the advance at which the least gap is intakeMinimum',
  compute: (now) => turnLeft(intakeAbove(now), leastWanted(now.intakeMinimum, now.clearanceAluminum, now.rodMaterial)),
});
