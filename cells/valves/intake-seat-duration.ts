import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible, needed } from '../../src/graph/state.ts';
import { profileDuration } from '../../src/physics/valve/profile.ts';
import { solidSeatLift } from '../../src/physics/valve/valve-lift.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { intakeDuration, tappet } from '../cam/inputs.ts';
import { intakeLash, rockerRatio } from './inputs.ts';
import { intakeLobe } from './intake-lobe.ts';
import { lobeOf } from './motion.ts';

export const intakeSeatDuration = cell({
  id: 'intakeSeatDuration',
  label: 'Intake duration on the seat',
  short: 'Intake seat',
  note: 'A hydraulic valve is taken to open and shut at the card’s seat lift; a solid’s lands where the lift equals its lash, so lash and rockers move it.',
  kind: scalar(angle),
  from: { tappet, intakeDuration, intakeLash, rockerRatio, intakeLobe },
  mayLack: ['intakeLash', 'rockerRatio', 'intakeLobe'], // only a solid needs them
  source: common('a solid tappet takes up its lash first'),
  formula: 'intakeDuration, or for a solid the duration at intakeLash / rockerRatio',
  compute: ({ tappet, intakeDuration, intakeLash, rockerRatio, intakeLobe }) => {
    if (tappet === 'hydraulic' || intakeLobe === null || intakeLash === 0) return intakeDuration;
    const open = profileDuration(
      lobeOf(needed(intakeLobe), 'intakeLobeLift'),
      solidSeatLift(needed(intakeLash), needed(rockerRatio)),
    );
    if (!(open > 0))
      throw new Impossible(['The lash takes up all of the lift: the valve never leaves its seat.'], 'intakeLash');
    return open;
  },
});
