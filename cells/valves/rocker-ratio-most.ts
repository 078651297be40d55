import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { smallestClearance } from '../../src/physics/valve/clearance.ts';
import { turnedUp } from '../../src/physics/valve/margin.ts';
import { common } from '../../src/references.ts';
import { fineRatio } from '../../src/units/quantity.ts';
import { rodMaterial } from '../block/inputs.ts';
import { exhaustAbove, exhaustTrain } from './exhaust-above.ts';
import { clearanceAluminum, exhaustMinimum, intakeMinimum } from './inputs.ts';
import { intakeAbove, intakeTrain } from './intake-above.ts';
import { leastWanted } from './room.ts';

export const rockerRatioMost = cell({
  id: 'rockerRatioMost',
  label: 'Rocker ratio at which a valve is at its minimum',
  short: 'Most rocker ratio',
  note: 'The larger it is than the ratio fitted, the more is left. Looked at from 0.5 to 3.',
  kind: scalar(fineRatio),
  from: { ...intakeTrain, ...exhaustTrain, intakeMinimum, exhaustMinimum, clearanceAluminum, rodMaterial },
  mayLack: ['intakeLash', 'exhaustLash'],
  source: common('the same geometry, solved for the rocker'),
  formula: 'the rockerRatio at which the first least gap is at intakeMinimum or exhaustMinimum',
  compute: (now) => {
    const [intake, exhaust] = [now.intakeMinimum, now.exhaustMinimum].map((least) =>
      leastWanted(least, now.clearanceAluminum, now.rodMaterial),
    ) as [number, number];
    const over = (rockerRatio: number): number =>
      Math.min(
        smallestClearance(intakeAbove({ ...now, rockerRatio })).clearance - intake,
        smallestClearance(exhaustAbove({ ...now, rockerRatio })).clearance - exhaust,
      );
    return turnedUp(over, 0, [0.5, 3]);
  },
});
