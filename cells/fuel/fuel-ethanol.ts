import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { share } from '../../src/units/quantity.ts';
import { baseEthanol, ethanolAdded, ethanolShare, fuelGrade } from './inputs.ts';

/** The least ethanol that may be sold as flex fuel. */
const leanestFlex = 0.51;

export const fuelEthanol = cell({
  id: 'fuelEthanol',
  label: 'Ethanol in the tank',
  note: 'Flex fuel is taken at its leanest, 51 %, unless more has been tested.',
  kind: scalar(share),
  from: { fuelGrade, ethanolShare, baseEthanol, ethanolAdded },
  source: common('flex fuel is sold at 51 to 83 % by season'),
  formula: 'ethanolShare, or baseEthanol × (1 − ethanolAdded) + ethanolAdded for a mix',
  compute: ({ fuelGrade, ethanolShare, baseEthanol, ethanolAdded }) =>
    fuelGrade === 'mixed'
      ? baseEthanol * (1 - ethanolAdded) + ethanolAdded
      : fuelGrade === 'flex'
        ? Math.max(ethanolShare, leanestFlex)
        : ethanolShare,
  examples: [
    { given: { fuelGrade: 'mixed', ethanolShare: 0, baseEthanol: 0.1, ethanolAdded: 0.2 }, gives: 0.28, within: 1e-12 },
  ],
});
