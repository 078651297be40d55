import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import { lobeFromCard } from '../../src/physics/valve/lobe-card.ts';
import type { Lobe } from '../../src/physics/valve/lobe.ts';
import { common } from '../../src/references.ts';
import { exhaustDuration, exhaustDuration050, seatLift } from '../cam/inputs.ts';
import { exhaustDuration200, exhaustLobeLift } from './inputs.ts';

export const exhaustLobe = cell({
  id: 'exhaustLobe',
  label: 'Exhaust lobe',
  note: 'A smooth lift curve through the card’s durations; the ground profile is the maker’s secret.',
  kind: structure<Lobe | null>(),
  from: { exhaustLobeLift, seatLift, exhaustDuration, exhaustDuration050, exhaustDuration200 },
  source: common('a polynomial family whose exponents are found from the card (Stone; Blair, from memory)'),
  formula: 'the exponents and width at which exhaustDuration and exhaustDuration050 are met',
  compute: ({ exhaustLobeLift, seatLift, exhaustDuration, exhaustDuration050, exhaustDuration200 }) => {
    const found = lobeFromCard({
      lobeLift: exhaustLobeLift,
      seatLift,
      seatDuration: exhaustDuration,
      duration050: exhaustDuration050,
      ...(exhaustDuration200 === null ? {} : { duration200: exhaustDuration200 }),
    });
    return 'trouble' in found ? null : found;
  },
});
