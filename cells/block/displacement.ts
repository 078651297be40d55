import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { cite, heywood } from '../../src/references.ts';
import { displacementVolume } from '../../src/units/quantity.ts';
import { cylinders } from './inputs.ts';
import { sweptVolume } from './swept-volume.ts';

export const displacement = cell({
  id: 'displacement',
  label: 'Displacement',
  note: 'What all the pistons displace together.',
  kind: scalar(displacementVolume),
  from: { cylinders, sweptVolume },
  source: cite(heywood, 'sec. 2.2'),
  formula: 'cylinders × sweptVolume',
  compute: ({ cylinders, sweptVolume }) => cylinders * sweptVolume,
  examples: [{ given: { cylinders: 8, sweptVolume: 5e-4 }, gives: 4e-3, within: 1e-15 }],
});
