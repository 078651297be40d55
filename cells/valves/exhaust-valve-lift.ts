import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { valveLift } from '../../src/physics/valve/valve-lift.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { tappet } from '../cam/inputs.ts';
import { lashOf, lobeOf } from './motion.ts';
import { exhaustLash, exhaustLobeLift, lobeSource, rockerRatio } from './inputs.ts';
import { exhaustLobe } from './exhaust-lobe.ts';

export const exhaustValveLift = cell({
  id: 'exhaustValveLift',
  label: 'Exhaust valve lift, full',
  short: 'Exhaust lift',
  note: 'What the dial indicator reads on the retainer.',
  kind: scalar(gap),
  from: { lobeSource, exhaustLobe, exhaustLobeLift, rockerRatio, tappet, exhaustLash },
  mayLack: ['exhaustLash'],
  source: common('a rigid valve train'),
  formula: '(exhaustLobeLift, or the highest lift of exhaustLobe) × rockerRatio − the lash of a solid',
  compute: ({ lobeSource, exhaustLobe, exhaustLobeLift, rockerRatio, tappet, exhaustLash }) =>
    valveLift(
      lobeSource === 'table' ? lobeOf(exhaustLobe, 'exhaustLobeLift').lift : exhaustLobeLift,
      rockerRatio,
      lashOf(tappet, exhaustLash),
    ),
  examples: [
    {
      given: {
        lobeSource: 'card',
        exhaustLobe: null,
        exhaustLobeLift: 0.008,
        rockerRatio: 1.5,
        tappet: 'solid',
        exhaustLash: 0.0005,
      },
      gives: 0.0115,
      within: 1e-12,
    },
  ],
});
