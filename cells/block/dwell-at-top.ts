import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { dwell } from '../../src/physics/linkage.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { inch, si } from '../../src/units/unit.ts';
import { linkage } from './linkage.ts';

const near = si(0.02, inch);

export const dwellAtTop = cell({
  id: 'dwellAtTop',
  label: 'Dwell within 0.020 in of the top',
  short: 'Dwell',
  note: 'Crank degrees the piston stays within 0.020 in (0.51 mm) of top dead center, both sides together.',
  kind: scalar(angle),
  from: { linkage },
  source: common('the depth is a habit; the angle is plane geometry'),
  formula: 'the crank angle between both crossings of that depth',
  compute: ({ linkage }) => dwell(linkage, near),
});
