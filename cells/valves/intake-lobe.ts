import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { lobeFromCard } from '../../src/physics/valve/lobe-card.ts';
import type { Lobe } from '../../src/physics/valve/lobe.ts';
import { common } from '../../src/references.ts';
import { intakeDuration, intakeDuration050, seatLift } from '../cam/inputs.ts';
import { intakeDuration200, intakeLobeLift } from './inputs.ts';

export const intakeLobe = cell({
  id: 'intakeLobe',
  label: 'Intake lobe',
  note: 'A smooth lift curve through the card’s durations; the ground profile is the maker’s secret.',
  kind: structure<Lobe | null>(),
  from: { intakeLobeLift, seatLift, intakeDuration, intakeDuration050, intakeDuration200 },
  source: common('a polynomial family whose exponents are found from the card (Stone; Blair, from memory)'),
  formula: 'the exponents and width at which intakeDuration and intakeDuration050 are met',
  compute: ({ intakeLobeLift, seatLift, intakeDuration, intakeDuration050, intakeDuration200 }) => {
    const found = lobeFromCard({
      lobeLift: intakeLobeLift,
      seatLift,
      seatDuration: intakeDuration,
      duration050: intakeDuration050,
      ...(intakeDuration200 === null ? {} : { duration200: intakeDuration200 }),
    });
    return 'trouble' in found ? null : found;
  },
});
