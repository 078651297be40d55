import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/air/correction-factors.ts';
import { cite, j1349 } from '../../src/references.ts';
import { factor } from '../../src/units/quantity.ts';
import { dryPressure } from './dry-pressure.ts';
import { airTemperature } from './inputs.ts';

export const factorJ1349 = cell({
  id: 'factorJ1349',
  label: 'SAE J1349',
  note: 'Times brake torque or power, to 25 °C and 99 kPa dry; it leaves friction alone, taken as 15 %.',
  kind: scalar(factor),
  from: { dryPressure, airTemperature },
  source: cite(j1349, 'sec. 5 (formula read; window from memory)'),
  formula: '1.18 × (99 kPa / dryPressure) × √((t + 273) / 298) − 0.18',
  valid: { airTemperature: [288.15, 308.15], dryPressure: [90_000, 105_000] },
  validValue: [0.93, 1.07],
  compute: ({ dryPressure, airTemperature }) => physics.factorJ1349(dryPressure, airTemperature),
});
