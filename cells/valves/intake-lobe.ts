import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import type { Profile } from '../../src/physics/valve/profile.ts';
import { common } from '../../src/references.ts';
import { intakeDuration, intakeDuration050, seatLift } from '../cam/inputs.ts';
import { cardLobe } from './card-lobe.ts';
import { intakeDuration200, intakeLobeLift, intakeLobeTable, lobeSource, lobeTableAngles } from './inputs.ts';
import { measuredLobe, type NoLobe } from './measured-lobe.ts';

export const intakeLobe = cell({
  id: 'intakeLobe',
  label: 'Intake lobe',
  note: 'A smooth lift curve through the card’s durations, or through every row of a table; the ground profile is the maker’s secret.',
  kind: structure<Profile | NoLobe | null>(),
  from: {
    lobeSource,
    lobeTableAngles,
    intakeLobeTable,
    intakeLobeLift,
    seatLift,
    intakeDuration,
    intakeDuration050,
    intakeDuration200,
  },
  source: common('a polynomial family whose exponents are found from the card (Stone; Blair, from memory)'),
  formula:
    'the exponents and width at which intakeDuration and intakeDuration050 are met, or the smooth curve through intakeLobeTable',
  compute: (now) =>
    now.lobeSource === 'table'
      ? measuredLobe(now.intakeLobeTable, now.lobeTableAngles, 'intake')
      : cardLobe({
          lobeLift: now.intakeLobeLift,
          seatLift: now.seatLift,
          seatDuration: now.intakeDuration,
          duration050: now.intakeDuration050,
          duration200: now.intakeDuration200,
        }).lobe,
});
