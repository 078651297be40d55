import { cell } from '../../src/graph/cell.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import * as q from '../../src/units/quantity.ts';
import { altitude } from '../air/inputs.ts';
import { dynamicRatio } from '../compression/dynamic-ratio.ts';
import { cautionEndHere } from './caution-end-here.ts';
import { cautionStartHere } from './caution-start-here.ts';
import { fuelVerdictKind, fuelVerdictOf } from './fuel-sentence.ts';
import { fuelGrade, headMaterial } from './inputs.ts';
import { pumpOctane } from './pump-octane.ts';

export const fuelVerdict = cell({
  id: 'fuelVerdict',
  label: 'Fuel verdict, here',
  short: 'Fuel',
  note: 'Reads the ratio from the seat closing. It is a low-speed index: ram, spark, mixture, chamber and heat decide the rest.',
  kind: fuelVerdictKind,
  from: { dynamicRatio, cautionStartHere, cautionEndHere, fuelGrade, pumpOctane, headMaterial, altitude },
  source: common('bands on the ratio from the seat closing'),
  formula: 'dynamicRatio against cautionStartHere and cautionEndHere',
  compute: (now) =>
    fuelVerdictOf({
      ratio: now.dynamicRatio,
      start: now.cautionStartHere,
      end: now.cautionEndHere,
      grade: now.fuelGrade,
      octane: now.pumpOctane,
      head: now.headMaterial,
      where: (fuel) => phrase` here, on ${fuel} at ${value(now.altitude, q.altitude)}`,
    }),
});
