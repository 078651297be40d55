import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { intakeCenterline, lobeSeparation } from './inputs.ts';

export const groundInAdvance = cell({
  id: 'groundInAdvance',
  label: 'Advance ground in',
  note: 'What the maker put in before any key or offset: separation less intake centerline.',
  kind: scalar(angle),
  from: { lobeSeparation, intakeCenterline },
  source: common('how the trade reads a cam card'),
  formula: 'lobeSeparation − intakeCenterline',
  compute: ({ lobeSeparation, intakeCenterline }) => lobeSeparation - intakeCenterline,
  examples: [{ given: { lobeSeparation: 1.92, intakeCenterline: 1.85 }, gives: 0.07, within: 1e-12 }],
});
