import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { cylinderVolume } from '../../src/physics/volumes.ts';
import { common } from '../../src/references.ts';
import { chamberVolume as volume } from '../../src/units/quantity.ts';
import { cubicCentimeter, si } from '../../src/units/unit.ts';
import { bore } from '../block/inputs.ts';
import { deckClearance } from './deck-clearance.ts';

export const deckVolume = cell({
  id: 'deckVolume',
  label: 'Deck volume',
  short: 'Deck',
  note: 'The slice of bore above the piston; it takes volume away when the piston stands proud.',
  kind: scalar(volume),
  from: { bore, deckClearance },
  source: common('a round opening'),
  formula: 'π / 4 × bore² × deckClearance',
  slider: [si(-10, cubicCentimeter), si(20, cubicCentimeter)],
  compute: ({ bore, deckClearance }) => cylinderVolume(bore, deckClearance),
  examples: [{ given: { bore: 0.1, deckClearance: -0.0005 }, gives: -3.926990816987e-6, within: 1e-15 }],
});
