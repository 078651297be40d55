import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { intakeDuration, intakeDuration050 } from './inputs.ts';

export const intakeRamp = cell({
  id: 'intakeRamp',
  label: 'Intake lobe, seat lift to 0.050 in',
  short: 'Intake ramp',
  note: 'Crank degrees the lobe takes from the seat lift to 0.050 in, one side: few mean a quick lobe.',
  kind: scalar(angle),
  from: { intakeDuration, intakeDuration050 },
  source: common('half the difference of both durations, for a symmetric lobe'),
  formula: '(intakeDuration − intakeDuration050) / 2',
  compute: ({ intakeDuration, intakeDuration050 }) => {
    if (intakeDuration050 >= intakeDuration)
      throw new Impossible(['The duration at 0.050 in must be shorter than the advertised one.'], 'intakeDuration050');
    return (intakeDuration - intakeDuration050) / 2;
  },
  examples: [{ given: { intakeDuration: 4.7, intakeDuration050: 3.9 }, gives: 0.4, within: 1e-12 }],
});
