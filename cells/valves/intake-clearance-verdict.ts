import { cell } from '../../src/graph/cell.ts';
import { common } from '../../src/references.ts';
import { rodMaterial } from '../block/inputs.ts';
import { clearanceAluminum, intakeMinimum } from './inputs.ts';
import { intakeClearance } from './intake-clearance.ts';
import { clearanceKind, judged, leastWanted } from './room.ts';

export const intakeClearanceVerdict = cell({
  id: 'intakeClearanceVerdict',
  label: 'Intake clearance verdict',
  short: 'Intake',
  note: 'Against the minimum below, which is common practice and yours to move.',
  kind: clearanceKind,
  from: { intakeClearance, intakeMinimum, clearanceAluminum, rodMaterial },
  source: common('least clearances'),
  formula: 'intakeClearance against intakeMinimum, and clearanceAluminum with aluminum rods',
  compute: ({ intakeClearance, intakeMinimum, clearanceAluminum, rodMaterial }) =>
    judged(intakeClearance, leastWanted(intakeMinimum, clearanceAluminum, rodMaterial), 'A clearance of'),
});
