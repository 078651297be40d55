import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { inch, si } from '../../src/units/unit.ts';
import { rod, stroke } from '../block/inputs.ts';
import { compressionHeight, deckHeight } from './inputs.ts';

export const deckClearance = cell({
  id: 'deckClearance',
  label: 'Deck clearance',
  short: 'Deck',
  note: 'Crown flat to the block’s face at top dead center: positive when the piston stops below it, negative when it stands proud.',
  kind: scalar(gap),
  from: { deckHeight, stroke, rod, compressionHeight },
  source: common('the stack-up of block, crank, rod and piston; for a centered pin'),
  formula: 'deckHeight − stroke / 2 − rod − compressionHeight',
  slider: [si(-0.02, inch), si(0.06, inch)],
  compute: ({ deckHeight, stroke, rod, compressionHeight }) => {
    if (deckHeight === null || compressionHeight === null)
      throw new Impossible(['Give deck height and compression height, or hold the deck clearance as measured.']);
    return deckHeight - stroke / 2 - rod - compressionHeight;
  },
  examples: [
    { given: { deckHeight: 0.23, stroke: 0.09, rod: 0.15, compressionHeight: 0.0345 }, gives: 0.0005, within: 1e-12 },
  ],
});
