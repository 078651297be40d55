import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { cite, heywood } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { sparkTrials } from './spark-trials.ts';

export const bestSparkAtSpeed = cell({
  id: 'bestSparkAtSpeed',
  label: 'Best spark at the engine speed',
  short: 'Best spark here',
  note: 'The least advance for most torque, whatever the fuel bears.',
  kind: scalar(angle, { short: 'BTDC', words: 'before top dead center' }),
  from: { sparkTrials },
  source: cite(heywood, 'sec. 9.1'),
  formula: 'the best of sparkTrials',
  compute: ({ sparkTrials }) => sparkTrials.best,
});
