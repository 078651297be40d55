import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { lobeFromCard } from '../../src/physics/valve/lobe-card.ts';
import { common } from '../../src/references.ts';
import { intakeDuration, intakeDuration050, seatLift } from '../cam/inputs.ts';
import { disagreement } from './disagreement.ts';
import { intakeDuration200, intakeLobeLift } from './inputs.ts';

export const intakeLobeRemark = cell({
  id: 'intakeLobeRemark',
  label: 'Intake card',
  note: 'Two figures of a card may ask for a lobe that no smooth curve answers.',
  kind: remark,
  from: { intakeLobeLift, seatLift, intakeDuration, intakeDuration050, intakeDuration200 },
  source: common('the range of smooth lobes'),
  formula: 'intakeDuration against intakeDuration050 at this intakeLobeLift',
  about: intakeLobeLift,
  compute: ({ intakeLobeLift, seatLift, intakeDuration, intakeDuration050, intakeDuration200 }) => {
    const found = lobeFromCard({
      lobeLift: intakeLobeLift,
      seatLift,
      seatDuration: intakeDuration,
      duration050: intakeDuration050,
      ...(intakeDuration200 === null ? {} : { duration200: intakeDuration200 }),
    });
    return 'trouble' in found ? disagreement(found) : null;
  },
});
