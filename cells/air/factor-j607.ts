import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/air/correction-factors.ts';
import { cite, j607 } from '../../src/references.ts';
import { factor } from '../../src/units/quantity.ts';
import { dryPressure } from './dry-pressure.ts';
import { airTemperature } from './inputs.ts';

export const factorJ607 = cell({
  id: 'factorJ607',
  label: 'SAE J607',
  note: 'The older one, to 60 °F and 29.92 inHg dry: it reads about 4 % higher than J1349 in the same air.',
  kind: scalar(factor),
  from: { dryPressure, airTemperature },
  source: cite(j607, 'as printed by B. Bowling, 1995; the window is common practice'),
  formula: '29.92 inHg / dryPressure × √((t + 459.7) / 519.7), t in °F',
  validValue: [0.93, 1.07],
  compute: ({ dryPressure, airTemperature }) => physics.factorJ607(dryPressure, airTemperature),
});
