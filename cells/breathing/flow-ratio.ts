import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { common } from '../../src/references.ts';
import { wholeShare } from '../../src/units/quantity.ts';
import { exhaustFlow28 } from './exhaust-flow28.ts';
import { intakeFlow28 } from './intake-flow28.ts';

export const flowRatio = cell({
  id: 'flowRatio',
  label: 'Exhaust flow of intake flow',
  short: 'Exhaust to intake',
  note: 'At full lift. Common practice, no source: 70 to 80 % is usual; with less, the exhaust gets the longer lobe.',
  kind: scalar(wholeShare),
  from: { exhaustFlow28, intakeFlow28 },
  source: common('what head shops compare'),
  formula: 'exhaustFlow28 / intakeFlow28',
  compute: ({ exhaustFlow28, intakeFlow28 }) => {
    if (!(intakeFlow28 > 0)) throw new Impossible(['Nothing flows through the intake at full lift.'], 'intakeFlow');
    return exhaustFlow28 / intakeFlow28;
  },
  examples: [{ given: { exhaustFlow28: 0.07, intakeFlow28: 0.1 }, gives: 0.7, within: 1e-12 }],
});
