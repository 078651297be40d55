import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { needed } from '../../src/graph/state.ts';
import { solidSeatFlanks } from '../../src/physics/valve/valve-lift.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { camEntry, tappet } from '../cam/inputs.ts';
import { intakeLash, lobeSource, rockerRatio } from './inputs.ts';
import { intakeLobe } from './intake-lobe.ts';
import { lobeOf } from './motion.ts';

export const intakeSeatSkew = cell({
  id: 'intakeSeatSkew',
  label: 'Intake, middle of the seat events past the peak',
  short: 'Intake skew',
  note: 'A lobe from a table may close more slowly than it opens, so that its peak is not in the middle; a card’s lobe is the same on both sides.',
  kind: scalar(angle),
  from: { camEntry, tappet, lobeSource, intakeLobe, intakeLash, rockerRatio },
  mayLack: ['intakeLobe', 'intakeLash', 'rockerRatio'], // only a solid on a table needs them
  source: common('a solid tappet takes up its lash first'),
  formula: 'for a solid on a table, the middle of both crossings of intakeLash / rockerRatio; otherwise 0',
  compute: ({ camEntry, tappet, lobeSource, intakeLobe, intakeLash, rockerRatio }) => {
    // Typed events are the reader's own, whatever the lobe; without lash the card's duration stands.
    if (camEntry !== 'lobes' || tappet === 'hydraulic' || lobeSource === 'card' || intakeLash === 0) return 0;
    const { opening, closing } = solidSeatFlanks(
      lobeOf(needed(intakeLobe), 'intakeLobeLift'),
      needed(intakeLash),
      needed(rockerRatio),
    );
    return (opening + closing) / 2;
  },
});
