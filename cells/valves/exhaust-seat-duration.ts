import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible, needed } from '../../src/graph/state.ts';
import { profileDuration } from '../../src/physics/valve/profile.ts';
import { solidSeatLift } from '../../src/physics/valve/valve-lift.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { exhaustDuration, tappet } from '../cam/inputs.ts';
import { exhaustLash, rockerRatio } from './inputs.ts';
import { exhaustLobe } from './exhaust-lobe.ts';
import { lobeOf } from './motion.ts';

export const exhaustSeatDuration = cell({
  id: 'exhaustSeatDuration',
  label: 'Exhaust duration on the seat',
  short: 'Exhaust seat',
  note: 'A hydraulic valve is taken to open and shut at the card’s seat lift; a solid’s lands where the lift equals its lash, so lash and rockers move it.',
  kind: scalar(angle),
  from: { tappet, exhaustDuration, exhaustLash, rockerRatio, exhaustLobe },
  mayLack: ['exhaustLash', 'rockerRatio', 'exhaustLobe'], // only a solid needs them
  source: common('a solid tappet takes up its lash first'),
  formula: 'exhaustDuration, or for a solid the duration at exhaustLash / rockerRatio',
  compute: ({ tappet, exhaustDuration, exhaustLash, rockerRatio, exhaustLobe }) => {
    if (tappet === 'hydraulic' || exhaustLobe === null || exhaustLash === 0) return exhaustDuration;
    const open = profileDuration(
      lobeOf(needed(exhaustLobe), 'exhaustLobeLift'),
      solidSeatLift(needed(exhaustLash), needed(rockerRatio)),
    );
    if (!(open > 0))
      throw new Impossible(['The lash takes up all of the lift: the valve never leaves its seat.'], 'exhaustLash');
    return open;
  },
});
