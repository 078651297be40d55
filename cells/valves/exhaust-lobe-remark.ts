import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { exhaustDuration, exhaustDuration050, seatLift } from '../cam/inputs.ts';
import { cardLobe } from './card-lobe.ts';
import { disagreement } from './disagreement.ts';
import { exhaustDuration200, exhaustLobeLift, lobeSource } from './inputs.ts';

export const exhaustLobeRemark = cell({
  id: 'exhaustLobeRemark',
  label: 'Exhaust card',
  note: 'Two figures of a card may ask for a lobe that no smooth curve answers.',
  kind: remark,
  from: { lobeSource, exhaustLobeLift, seatLift, exhaustDuration, exhaustDuration050, exhaustDuration200 },
  source: common('the range of smooth lobes'),
  formula: 'exhaustDuration against exhaustDuration050 at this exhaustLobeLift',
  about: exhaustLobeLift,
  compute: (now) => {
    if (now.lobeSource === 'table') return null;
    const { lobe, refusal } = cardLobe({
      lobeLift: now.exhaustLobeLift,
      seatLift: now.seatLift,
      seatDuration: now.exhaustDuration,
      duration050: now.exhaustDuration050,
      duration200: now.exhaustDuration200,
    });
    if (!refusal) return null;
    return lobe
      ? [...disagreement(refusal), ' The lobe is drawn without the duration at 0.200 in.']
      : disagreement(refusal);
  },
});
