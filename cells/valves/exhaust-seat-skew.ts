import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { needed } from '../../src/graph/state.ts';
import { solidSeatFlanks } from '../../src/physics/valve/valve-lift.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { camEntry, tappet } from '../cam/inputs.ts';
import { exhaustLash, lobeSource, rockerRatio } from './inputs.ts';
import { exhaustLobe } from './exhaust-lobe.ts';
import { lobeOf } from './motion.ts';

export const exhaustSeatSkew = cell({
  id: 'exhaustSeatSkew',
  label: 'Exhaust, middle of the seat events past the peak',
  short: 'Exhaust skew',
  note: 'A lobe from a table may close more slowly than it opens, so that its peak is not in the middle; a card’s lobe is the same on both sides.',
  kind: scalar(angle),
  from: { camEntry, tappet, lobeSource, exhaustLobe, exhaustLash, rockerRatio },
  mayLack: ['exhaustLobe', 'exhaustLash', 'rockerRatio'], // only a solid on a table needs them
  source: common('a solid tappet takes up its lash first'),
  formula: 'for a solid on a table, the middle of both crossings of exhaustLash / rockerRatio; otherwise 0',
  compute: ({ camEntry, tappet, lobeSource, exhaustLobe, exhaustLash, rockerRatio }) => {
    // Typed events are the reader's own, whatever the lobe; without lash the card's duration stands.
    if (camEntry !== 'lobes' || tappet === 'hydraulic' || lobeSource === 'card' || exhaustLash === 0) return 0;
    const { opening, closing } = solidSeatFlanks(
      lobeOf(needed(exhaustLobe), 'exhaustLobeLift'),
      needed(exhaustLash),
      needed(rockerRatio),
    );
    return (opening + closing) / 2;
  },
});
