import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import type { Profile } from '../../src/physics/valve/profile.ts';
import { common } from '../../src/references.ts';
import { exhaustDuration, exhaustDuration050, seatLift } from '../cam/inputs.ts';
import { cardLobe } from './card-lobe.ts';
import { exhaustDuration200, exhaustLobeLift, exhaustLobeTable, lobeSource, lobeTableAngles } from './inputs.ts';
import { measuredLobe, type NoLobe } from './measured-lobe.ts';

export const exhaustLobe = cell({
  id: 'exhaustLobe',
  label: 'Exhaust lobe',
  note: 'A smooth lift curve through the card’s durations, or through every row of a table; the ground profile is the maker’s secret.',
  kind: structure<Profile | NoLobe | null>(),
  from: {
    lobeSource,
    lobeTableAngles,
    exhaustLobeTable,
    exhaustLobeLift,
    seatLift,
    exhaustDuration,
    exhaustDuration050,
    exhaustDuration200,
  },
  source: common('a polynomial family whose exponents are found from the card (Stone; Blair, from memory)'),
  formula:
    'the exponents and width at which exhaustDuration and exhaustDuration050 are met, or the smooth curve through exhaustLobeTable',
  compute: (now) =>
    now.lobeSource === 'table'
      ? measuredLobe(now.exhaustLobeTable, now.lobeTableAngles, 'exhaust')
      : cardLobe({
          lobeLift: now.exhaustLobeLift,
          seatLift: now.seatLift,
          seatDuration: now.exhaustDuration,
          duration050: now.exhaustDuration050,
          duration200: now.exhaustDuration200,
        }).lobe,
});
