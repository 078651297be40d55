import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { cite, sae960497 } from '../../src/references.ts';
import { octane } from '../../src/units/quantity.ts';
import { airTemperature } from '../air/inputs.ts';

const reference = 298.15; // K, 25 °C
const perOctane = 7; // K

export const designDayOctane = cell({
  id: 'designDayOctane',
  label: 'Octane this heat asks for',
  short: 'For heat',
  note: 'One octane number for each 7 K of intake air above 25 °C: read it beside the verdict, whose edges it does not move.',
  kind: scalar(octane),
  from: { airTemperature },
  source: cite(sae960497, 'whole-engine averages'),
  formula: '(airTemperature − 25 °C) / 7 K, not below 0',
  compute: ({ airTemperature }) => Math.max(0, (airTemperature - reference) / perOctane),
  examples: [{ given: { airTemperature: 312.15 }, gives: 2, within: 1e-12 }],
});
