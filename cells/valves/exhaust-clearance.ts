import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { inch, si } from '../../src/units/unit.ts';
import { exhaustNearest } from './exhaust-nearest.ts';

export const exhaustClearance = cell({
  id: 'exhaustClearance',
  label: 'Exhaust valve to piston, least',
  short: 'Exhaust clearance',
  note: 'Cold and static: rods stretch and valves float, and the margin is for them. Clay or light checking springs on the real engine decide.',
  kind: scalar(gap),
  from: { exhaustNearest },
  source: common('plane geometry of piston and valve'),
  formula: 'the least gap found',
  slider: [0, si(0.3, inch)],
  compute: ({ exhaustNearest }) => exhaustNearest.clearance,
});
