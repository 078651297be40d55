import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { moistAirDensity } from '../../src/physics/air/density.ts';
import { ashrae, cite } from '../../src/references.ts';
import { density } from '../../src/units/quantity.ts';
import { airTemperature } from './inputs.ts';
import { dryPressure } from './dry-pressure.ts';
import { vaporPressure } from './vapor-pressure.ts';

export const airDensity = cell({
  id: 'airDensity',
  label: 'Air density',
  note: 'How much a cubic meter of this air weighs, its moisture included.',
  kind: scalar(density),
  from: { dryPressure, vaporPressure, airTemperature },
  source: cite(ashrae, 'eq. 26, as a mixture of ideal gases'),
  formula: 'dryPressure / (R dry × airTemperature) + vaporPressure / (R vapor × airTemperature)',
  compute: ({ dryPressure, vaporPressure, airTemperature }) =>
    moistAirDensity(dryPressure, vaporPressure, airTemperature),
});
