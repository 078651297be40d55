import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { turnLeft } from '../../src/physics/valve/margin.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { rodMaterial } from '../block/inputs.ts';
import { exhaustAbove, exhaustTrain } from './exhaust-above.ts';
import { clearanceAluminum, exhaustMinimum } from './inputs.ts';
import { leastWanted } from './room.ts';

export const retardLeft = cell({
  id: 'retardLeft',
  label: 'Retard left before the exhaust valve is at its minimum',
  short: 'Retard left',
  note: 'Crank degrees later from where the cam stands now, looked at up to 60. Negative: it is under already, and the cam has to come forward.',
  kind: scalar(angle),
  from: { ...exhaustTrain, exhaustMinimum, clearanceAluminum, rodMaterial },
  mayLack: ['exhaustLash'],
  source: common('the same geometry, solved for the cam’s place'),
  formula: 'the retard at which the least gap is exhaustMinimum',
  compute: (now) =>
    turnLeft(exhaustAbove(now), leastWanted(now.exhaustMinimum, now.clearanceAluminum, now.rodMaterial)),
});
