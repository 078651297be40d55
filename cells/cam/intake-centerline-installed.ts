import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { camAdvance, camEntry, intakeCenterline, intakeClosesAt, intakeOpensAt } from './inputs.ts';

export const intakeCenterlineInstalled = cell({
  id: 'intakeCenterlineInstalled',
  label: 'Intake centerline, as installed',
  short: 'Installed center',
  note: 'Advance brings the whole cam earlier, so the centerline comes down.',
  kind: scalar(angle, { short: 'ATDC', words: 'after top dead center' }),
  from: { camEntry, intakeCenterline, intakeOpensAt, intakeClosesAt, camAdvance },
  source: common('the middle of a symmetric lobe'),
  formula: 'intakeCenterline − camAdvance, or the middle of both events − camAdvance',
  compute: ({ camEntry, intakeCenterline, intakeOpensAt, intakeClosesAt, camAdvance }) =>
    (camEntry === 'lobes' ? intakeCenterline : (Math.PI + intakeClosesAt - intakeOpensAt) / 2) - camAdvance,
});
