import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { crownAtValve, intakeReliefDiameter, radialMinimum } from './inputs.ts';
import { intakeRadialClearance } from './intake-radial-clearance.ts';

export const intakeRadialRemark = cell({
  id: 'intakeRadialRemark',
  label: 'Intake relief',
  note: 'A valve that clears the floor of its relief may still touch its wall.',
  kind: remark,
  from: { crownAtValve, intakeRadialClearance, radialMinimum },
  source: common('least radial clearance'),
  formula: 'intakeRadialClearance < radialMinimum',
  about: intakeReliefDiameter,
  compute: ({ crownAtValve, intakeRadialClearance, radialMinimum }) =>
    crownAtValve === 'relief' && intakeRadialClearance < radialMinimum
      ? ['The valve’s edge comes too near the wall of its relief.']
      : null,
});
