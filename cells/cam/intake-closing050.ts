import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { intakeSeatDuration } from '../valves/intake-seat-duration.ts';
import { intakeSeatSkew } from '../valves/intake-seat-skew.ts';
import { intakeClosing } from './intake-closing.ts';
import { intakeDuration050 } from './inputs.ts';

export const intakeClosing050 = cell({
  id: 'intakeClosing050',
  label: 'Intake closing, at 0.050 in',
  note: 'Where the tappet comes back through 0.050 in: the figure many cards print, well before the valve is shut.',
  kind: scalar(angle, { short: 'ABDC', words: 'after bottom dead center' }),
  from: { intakeClosing, intakeSeatDuration, intakeSeatSkew, intakeDuration050 },
  source: common('arithmetic of a symmetric lobe'),
  formula: 'intakeClosing − intakeSeatSkew − (intakeSeatDuration − intakeDuration050) / 2',
  compute: ({ intakeClosing, intakeSeatDuration, intakeSeatSkew, intakeDuration050 }) =>
    intakeClosing - intakeSeatSkew - (intakeSeatDuration - intakeDuration050) / 2,
  examples: [
    {
      given: { intakeClosing: 1.1, intakeSeatDuration: 4.7, intakeSeatSkew: 0, intakeDuration050: 3.9 },
      gives: 0.7,
      within: 1e-12,
    },
  ],
});
