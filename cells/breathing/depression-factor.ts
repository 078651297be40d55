import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { squareRootFactor, usualDepression } from '../../src/physics/flow/bench.ts';
import { common } from '../../src/references.ts';
import { fineRatio } from '../../src/units/quantity.ts';
import { flowDepression } from './inputs.ts';

export const depressionFactor = cell({
  id: 'depressionFactor',
  label: 'Square root rule to 28 inches of water',
  short: 'Depression factor',
  note: 'What shops multiply a flow by to compare it; the figures here use air that thins out instead, which from 10 inches gives 2.5 % less.',
  kind: scalar(fineRatio),
  from: { flowDepression },
  source: common('Bernoulli: flow goes with the square root of the depression'),
  formula: '√(28 inches of water / flowDepression)',
  compute: ({ flowDepression }) => squareRootFactor(flowDepression, usualDepression),
  // 7 inches of water is a quarter of 28.
  examples: [{ given: { flowDepression: 7 * 25.4 * 9.80665 }, gives: 2, within: 1e-12 }],
});
