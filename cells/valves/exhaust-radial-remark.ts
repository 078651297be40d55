import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { crownAtValve, exhaustReliefDiameter, radialMinimum } from './inputs.ts';
import { exhaustRadialClearance } from './exhaust-radial-clearance.ts';

export const exhaustRadialRemark = cell({
  id: 'exhaustRadialRemark',
  label: 'Exhaust relief',
  note: 'A valve that clears the floor of its relief may still touch its wall.',
  kind: remark,
  from: { crownAtValve, exhaustRadialClearance, radialMinimum },
  source: common('least radial clearance'),
  formula: 'exhaustRadialClearance < radialMinimum',
  about: exhaustReliefDiameter,
  compute: ({ crownAtValve, exhaustRadialClearance, radialMinimum }) =>
    crownAtValve === 'relief' && exhaustRadialClearance < radialMinimum
      ? ['The valve’s edge comes too near the wall of its relief.']
      : null,
});
