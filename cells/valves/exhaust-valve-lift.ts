import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { valveLift } from '../../src/physics/valve/valve-lift.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { tappet } from '../cam/inputs.ts';
import { lashOf } from './motion.ts';
import { exhaustLash, exhaustLobeLift, rockerRatio } from './inputs.ts';

export const exhaustValveLift = cell({
  id: 'exhaustValveLift',
  label: 'Exhaust valve lift, full',
  short: 'Exhaust lift',
  note: 'What the dial indicator reads on the retainer.',
  kind: scalar(gap),
  from: { exhaustLobeLift, rockerRatio, tappet, exhaustLash },
  source: common('a rigid valve train'),
  formula: 'exhaustLobeLift × rockerRatio − the lash of a solid',
  compute: ({ exhaustLobeLift, rockerRatio, tappet, exhaustLash }) =>
    valveLift(exhaustLobeLift, rockerRatio, lashOf(tappet, exhaustLash)),
  examples: [{ given: { exhaustLobeLift: 0.008, rockerRatio: 1.5, tappet: 'solid', exhaustLash: 0.0005 }, gives: 0.0115, within: 1e-12 }],
});
