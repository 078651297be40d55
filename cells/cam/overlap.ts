import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { exhaustClosing } from './exhaust-closing.ts';
import { intakeOpening } from './intake-opening.ts';

export const overlap = cell({
  id: 'overlap',
  label: 'Overlap',
  short: 'Overlap',
  note: 'Crank degrees around the top during which both valves are off their seats.',
  kind: scalar(angle),
  from: { intakeOpening, exhaustClosing },
  source: common('arithmetic of both events'),
  formula: 'intakeOpening + exhaustClosing',
  compute: ({ intakeOpening, exhaustClosing }) => intakeOpening + exhaustClosing,
  examples: [{ given: { intakeOpening: 0.5, exhaustClosing: 0.4 }, gives: 0.9, within: 1e-12 }],
});
