import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { lobeFromCard } from '../../src/physics/valve/lobe-card.ts';
import { common } from '../../src/references.ts';
import { exhaustDuration, exhaustDuration050, seatLift } from '../cam/inputs.ts';
import { disagreement } from './disagreement.ts';
import { exhaustDuration200, exhaustLobeLift } from './inputs.ts';

export const exhaustLobeRemark = cell({
  id: 'exhaustLobeRemark',
  label: 'Exhaust card',
  note: 'Two figures of a card may ask for a lobe that no smooth curve answers.',
  kind: remark,
  from: { exhaustLobeLift, seatLift, exhaustDuration, exhaustDuration050, exhaustDuration200 },
  source: common('the range of smooth lobes'),
  formula: 'exhaustDuration against exhaustDuration050 at this exhaustLobeLift',
  about: exhaustLobeLift,
  compute: ({ exhaustLobeLift, seatLift, exhaustDuration, exhaustDuration050, exhaustDuration200 }) => {
    const found = lobeFromCard({
      lobeLift: exhaustLobeLift,
      seatLift,
      seatDuration: exhaustDuration,
      duration050: exhaustDuration050,
      ...(exhaustDuration200 === null ? {} : { duration200: exhaustDuration200 }),
    });
    return 'trouble' in found ? disagreement(found) : null;
  },
});
