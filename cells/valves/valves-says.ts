import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { gap } from '../../src/units/quantity.ts';
import { exhaustClearance } from './exhaust-clearance.ts';
import { intakeClearance } from './intake-clearance.ts';

export const valvesSays = cell({
  id: 'valvesSays',
  label: 'Valve motion and clearance, in one line',
  note: 'What the chapter comes to, for when it is closed.',
  kind: remark,
  from: { intakeClearance, exhaustClearance },
  source: common('a summary'),
  formula: 'intakeClearance, exhaustClearance',
  compute: ({ intakeClearance, exhaustClearance }) =>
    phrase`Intake ${value(intakeClearance, gap)} and exhaust ${value(exhaustClearance, gap)} from the pistons, at the least.`,
});
