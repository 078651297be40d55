import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { rotation } from '../../src/units/quantity.ts';
import { engineBySpeed } from '../output/engine-by-speed.ts';
import { octaneRequirement } from './octane-requirement.ts';

export const octaneWorstSpeed = cell({
  id: 'octaneWorstSpeed',
  label: 'Worst for octane at',
  short: 'Worst at',
  note: 'Of the speeds of the curve; a knock that starts here is heard under load in top gear.',
  kind: scalar(rotation),
  from: { engineBySpeed, octaneRequirement },
  source: common('read off the curve'),
  formula: 'the speed in engineBySpeed of octaneRequirement',
  compute: ({ engineBySpeed, octaneRequirement }) =>
    engineBySpeed.rows.find((row) => row.octaneRequirement === octaneRequirement)!.speed,
});
