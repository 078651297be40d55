import { cell } from '../../src/graph/cell.ts';
import { common } from '../../src/references.ts';
import { rodMaterial } from '../block/inputs.ts';
import { clearanceAluminum, exhaustMinimum } from './inputs.ts';
import { exhaustClearance } from './exhaust-clearance.ts';
import { clearanceKind, judged, leastWanted } from './room.ts';

export const exhaustClearanceVerdict = cell({
  id: 'exhaustClearanceVerdict',
  label: 'Exhaust clearance verdict',
  short: 'Exhaust',
  note: 'Against the minimum below, which is common practice and yours to move.',
  kind: clearanceKind,
  from: { exhaustClearance, exhaustMinimum, clearanceAluminum, rodMaterial },
  source: common('least clearances'),
  formula: 'exhaustClearance against exhaustMinimum, and clearanceAluminum with aluminum rods',
  compute: ({ exhaustClearance, exhaustMinimum, clearanceAluminum, rodMaterial }) =>
    judged(exhaustClearance, leastWanted(exhaustMinimum, clearanceAluminum, rodMaterial), 'A clearance of'),
});
