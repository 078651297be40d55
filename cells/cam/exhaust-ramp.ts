import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { exhaustDuration, exhaustDuration050 } from './inputs.ts';

export const exhaustRamp = cell({
  id: 'exhaustRamp',
  label: 'Exhaust lobe, seat lift to 0.050 in',
  short: 'Exhaust ramp',
  note: 'Crank degrees the lobe takes from the seat lift to 0.050 in, one side: few mean a quick lobe.',
  kind: scalar(angle),
  from: { exhaustDuration, exhaustDuration050 },
  source: common('half the difference of both durations, for a symmetric lobe'),
  formula: '(exhaustDuration − exhaustDuration050) / 2',
  compute: ({ exhaustDuration, exhaustDuration050 }) => {
    if (exhaustDuration050 >= exhaustDuration)
      throw new Impossible(['The duration at 0.050 in must be shorter than the advertised one.'], 'exhaustDuration050');
    return (exhaustDuration - exhaustDuration050) / 2;
  },
  examples: [{ given: { exhaustDuration: 4.7, exhaustDuration050: 3.9 }, gives: 0.4, within: 1e-12 }],
});
