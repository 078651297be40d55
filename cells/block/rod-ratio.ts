import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { fineRatio } from '../../src/units/quantity.ts';
import { rod, stroke } from './inputs.ts';

export const rodRatio = cell({
  id: 'rodRatio',
  label: 'Rod to stroke ratio',
  short: 'Rod ratio',
  note: 'A longer rod keeps the piston near the top for longer and takes it away more gently.',
  kind: scalar(fineRatio),
  from: { rod, stroke },
  source: common('the ratio as the trade quotes it'),
  formula: 'rod / stroke',
  valid: {},
  validValue: [1.3, 2.5],
  compute: ({ rod, stroke }) => rod / stroke,
  examples: [{ given: { rod: 0.15, stroke: 0.1 }, gives: 1.5, within: 1e-12 }],
});
