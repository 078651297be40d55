import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { inch, si } from '../../src/units/unit.ts';
import { deckClearance } from './deck-clearance.ts';
import { gasketThickness } from './inputs.ts';

export const squishGap = cell({
  id: 'squishGap',
  label: 'Squish gap',
  short: 'Squish',
  note: 'Flat of the crown to flat of the head at top dead center, cold.',
  kind: scalar(gap),
  from: { deckClearance, gasketThickness },
  source: common('the stack between both flats'),
  formula: 'deckClearance + gasketThickness',
  slider: [si(0.02, inch), si(0.12, inch)],
  compute: ({ deckClearance, gasketThickness }) => {
    if (deckClearance + gasketThickness < 0)
      throw new Impossible(['The piston would pass the head’s face.'], 'deckClearance');
    return deckClearance + gasketThickness;
  },
  examples: [{ given: { deckClearance: 0.0003, gasketThickness: 0.001 }, gives: 0.0013, within: 1e-15 }],
});
