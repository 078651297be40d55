import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/air/standard-atmosphere.ts';
import { cite, ussa76 } from '../../src/references.ts';
import { altitude } from '../../src/units/quantity.ts';
import { airDensity } from './air-density.ts';

export const densityAltitude = cell({
  id: 'densityAltitude',
  label: 'Density altitude',
  note: 'The height at which standard air is as thin as this.',
  kind: scalar(altitude),
  from: { airDensity },
  source: cite(ussa76, 'eqs. 33a and 42, turned around'),
  formula: 'the height at which the standard atmosphere has airDensity',
  compute: ({ airDensity }) => physics.densityAltitude(airDensity),
});
