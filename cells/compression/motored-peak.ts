import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { gaugePressure } from '../../src/units/quantity.ts';
import { motoredPressure } from './motored-pressure.ts';

export const motoredPeak = cell({
  id: 'motoredPeak',
  label: 'Motored compression, peak',
  short: 'Motored peak',
  note: 'The highest pressure of one turn; a gauge gathers several turns through its own valve and reads otherwise.',
  kind: scalar(gaugePressure),
  from: { motoredPressure },
  source: common('the largest of the curve'),
  formula: 'the largest of motoredPressure',
  compute: ({ motoredPressure }) => motoredPressure.y.reduce((most, p) => Math.max(most, p), -Infinity),
  examples: [
    { given: { motoredPressure: { x: Float64Array.of(0, 1, 2), y: Float64Array.of(1, 3, 2) } }, gives: 3, within: 0 },
  ],
});
