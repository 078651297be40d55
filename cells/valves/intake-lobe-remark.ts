import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { intakeDuration, intakeDuration050, seatLift } from '../cam/inputs.ts';
import { cardLobe } from './card-lobe.ts';
import { disagreement } from './disagreement.ts';
import { intakeDuration200, intakeLobeLift, lobeSource } from './inputs.ts';

export const intakeLobeRemark = cell({
  id: 'intakeLobeRemark',
  label: 'Intake card',
  note: 'Two figures of a card may ask for a lobe that no smooth curve answers.',
  kind: remark,
  from: { lobeSource, intakeLobeLift, seatLift, intakeDuration, intakeDuration050, intakeDuration200 },
  source: common('the range of smooth lobes'),
  formula: 'intakeDuration against intakeDuration050 at this intakeLobeLift',
  about: intakeLobeLift,
  compute: (now) => {
    if (now.lobeSource === 'table') return null;
    const { lobe, refusal } = cardLobe({
      lobeLift: now.intakeLobeLift,
      seatLift: now.seatLift,
      seatDuration: now.intakeDuration,
      duration050: now.intakeDuration050,
      duration200: now.intakeDuration200,
    });
    if (!refusal) return null;
    return lobe
      ? [...disagreement(refusal), ' The lobe is drawn without the duration at 0.200 in.']
      : disagreement(refusal);
  },
});
