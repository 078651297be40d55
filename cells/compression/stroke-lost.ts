import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { share } from '../../src/units/quantity.ts';
import { pistonStroke } from '../block/piston-stroke.ts';
import { effectiveStroke } from './effective-stroke.ts';

export const strokeLost = cell({
  id: 'strokeLost',
  label: 'Share of the stroke lost',
  short: 'Stroke lost',
  note: 'What the piston has come up before the valve shut.',
  kind: scalar(share),
  from: { effectiveStroke, pistonStroke },
  source: common('the rest of the stroke'),
  formula: '1 − effectiveStroke / pistonStroke',
  compute: ({ effectiveStroke, pistonStroke }) => 1 - effectiveStroke / pistonStroke,
  examples: [{ given: { effectiveStroke: 0.08, pistonStroke: 0.1 }, gives: 0.2, within: 1e-12 }],
});
