import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { bore } from '../block/inputs.ts';
import { gasketBore } from './inputs.ts';

export const gasketOpeningRemark = cell({
  id: 'gasketOpeningRemark',
  label: 'Gasket opening',
  note: 'An opening smaller than the bore hangs into the fire.',
  kind: remark,
  from: { gasketBore, bore },
  source: common('a gasket must not overhang the bore'),
  formula: 'gasketBore < bore',
  about: gasketBore,
  compute: ({ gasketBore, bore }) =>
    gasketBore < bore
      ? ['The opening is smaller than the bore: its edge would hang into the cylinder and glow.']
      : null,
});
