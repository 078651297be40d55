import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { crownThickness, reliefCut } from './inputs.ts';

export const crownLeft = cell({
  id: 'crownLeft',
  label: 'Crown left under the reliefs',
  note: 'What the cut leaves of the piston’s roof.',
  kind: scalar(gap),
  from: { crownThickness, reliefCut },
  source: common('the rest of the crown'),
  formula: 'crownThickness − reliefCut',
  compute: ({ crownThickness, reliefCut }) => crownThickness - reliefCut,
  examples: [{ given: { crownThickness: 0.005, reliefCut: 0.001 }, gives: 0.004, within: 1e-15 }],
});
