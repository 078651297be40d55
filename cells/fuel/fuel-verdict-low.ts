import { cell } from '../../src/graph/cell.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import * as q from '../../src/units/quantity.ts';
import { dynamicRatio } from '../compression/dynamic-ratio.ts';
import { cautionEndLow } from './caution-end-low.ts';
import { cautionStartLow } from './caution-start-low.ts';
import { fuelVerdictKind, fuelVerdictOf } from './fuel-sentence.ts';
import { fuelGrade, headMaterial, lowestAltitude } from './inputs.ts';
import { pumpOctane } from './pump-octane.ts';

export const fuelVerdictLow = cell({
  id: 'fuelVerdictLow',
  label: 'Fuel verdict, taken down',
  short: 'Low',
  note: 'Reads the ratio from the seat closing. It is a low-speed index: ram, spark, mixture, chamber and heat decide the rest.',
  kind: fuelVerdictKind,
  from: { dynamicRatio, cautionStartLow, cautionEndLow, fuelGrade, pumpOctane, headMaterial, lowestAltitude },
  source: common('bands on the ratio from the seat closing'),
  formula: 'dynamicRatio against cautionStartLow and cautionEndLow',
  compute: (now) =>
    fuelVerdictOf({
      ratio: now.dynamicRatio,
      start: now.cautionStartLow,
      end: now.cautionEndLow,
      grade: now.fuelGrade,
      octane: now.pumpOctane,
      head: now.headMaterial,
      where: (fuel) =>
        now.lowestAltitude === 0
          ? phrase` taken down to sea level, on ${fuel}`
          : phrase` taken down to ${value(now.lowestAltitude, q.altitude)}, on ${fuel}`,
    }),
});
