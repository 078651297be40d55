import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { valveLift } from '../../src/physics/valve/valve-lift.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { tappet } from '../cam/inputs.ts';
import { lashOf, lobeOf } from './motion.ts';
import { intakeLash, intakeLobeLift, lobeSource, rockerRatio } from './inputs.ts';
import { intakeLobe } from './intake-lobe.ts';

export const intakeValveLift = cell({
  id: 'intakeValveLift',
  label: 'Intake valve lift, full',
  short: 'Intake lift',
  note: 'What the dial indicator reads on the retainer.',
  kind: scalar(gap),
  from: { lobeSource, intakeLobe, intakeLobeLift, rockerRatio, tappet, intakeLash },
  mayLack: ['intakeLash'],
  source: common('a rigid valve train'),
  formula: '(intakeLobeLift, or the highest lift of intakeLobe) × rockerRatio − the lash of a solid',
  compute: ({ lobeSource, intakeLobe, intakeLobeLift, rockerRatio, tappet, intakeLash }) =>
    valveLift(
      lobeSource === 'table' ? lobeOf(intakeLobe, 'intakeLobeLift').lift : intakeLobeLift,
      rockerRatio,
      lashOf(tappet, intakeLash),
    ),
  examples: [
    {
      given: {
        lobeSource: 'card',
        intakeLobe: null,
        intakeLobeLift: 0.008,
        rockerRatio: 1.5,
        tappet: 'solid',
        intakeLash: 0.0005,
      },
      gives: 0.0115,
      within: 1e-12,
    },
  ],
});
