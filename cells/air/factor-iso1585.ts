import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/air/correction-factors.ts';
import { cite, iso1585 } from '../../src/references.ts';
import { factor } from '../../src/units/quantity.ts';
import { dryPressure } from './dry-pressure.ts';
import { airTemperature } from './inputs.ts';

export const factorIso1585 = cell({
  id: 'factorIso1585',
  label: 'ISO 1585',
  note: 'To 25 °C and 99 kPa dry.',
  kind: scalar(factor),
  from: { dryPressure, airTemperature },
  source: cite(iso1585, 'cl. 6 (exponents and window from memory)'),
  formula: '(99 kPa / dryPressure) ^ 1.2 × ((t + 273) / 298) ^ 0.6',
  valid: { airTemperature: [288, 308], dryPressure: [80_000, 110_000] },
  validValue: [0.93, 1.07],
  compute: ({ dryPressure, airTemperature }) => physics.factorIso1585(dryPressure, airTemperature),
});
