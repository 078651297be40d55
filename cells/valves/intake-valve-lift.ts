import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { valveLift } from '../../src/physics/valve/valve-lift.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { tappet } from '../cam/inputs.ts';
import { lashOf } from './motion.ts';
import { intakeLash, intakeLobeLift, rockerRatio } from './inputs.ts';

export const intakeValveLift = cell({
  id: 'intakeValveLift',
  label: 'Intake valve lift, full',
  short: 'Intake lift',
  note: 'What the dial indicator reads on the retainer.',
  kind: scalar(gap),
  from: { intakeLobeLift, rockerRatio, tappet, intakeLash },
  source: common('a rigid valve train'),
  formula: 'intakeLobeLift × rockerRatio − the lash of a solid',
  compute: ({ intakeLobeLift, rockerRatio, tappet, intakeLash }) =>
    valveLift(intakeLobeLift, rockerRatio, lashOf(tappet, intakeLash)),
  examples: [{ given: { intakeLobeLift: 0.008, rockerRatio: 1.5, tappet: 'solid', intakeLash: 0.0005 }, gives: 0.0115, within: 1e-12 }],
});
