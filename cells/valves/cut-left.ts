import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { cutLeft as leftUnder } from '../../src/physics/valve/margin.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { rodMaterial } from '../block/inputs.ts';
import { exhaustAbove, exhaustTrain } from './exhaust-above.ts';
import { clearanceAluminum, exhaustMinimum, intakeMinimum } from './inputs.ts';
import { intakeAbove, intakeTrain } from './intake-above.ts';
import { leastWanted } from './room.ts';

export const cutLeft = cell({
  id: 'cutLeft',
  label: 'Left to mill off the head or cut off the deck, together',
  short: 'Cut left',
  note: 'Before the nearer valve is at its minimum. Negative: that much too much is off, and a thicker gasket or deeper reliefs have to give it back.',
  kind: scalar(gap),
  from: { ...intakeTrain, ...exhaustTrain, intakeMinimum, exhaustMinimum, clearanceAluminum, rodMaterial },
  mayLack: ['intakeLash', 'exhaustLash'],
  source: common('the same geometry: a cut lowers both valves by itself, along the bore'),
  formula:
    'the lesser of what each valve’s least gap has over intakeMinimum or exhaustMinimum, in the direction of the cut',
  compute: (now) =>
    Math.min(
      leftUnder(intakeAbove(now), leastWanted(now.intakeMinimum, now.clearanceAluminum, now.rodMaterial)),
      leftUnder(exhaustAbove(now), leastWanted(now.exhaustMinimum, now.clearanceAluminum, now.rodMaterial)),
    ),
});
