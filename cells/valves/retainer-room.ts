import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { retainerReserve } from '../../src/physics/valve/spring.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { exhaustValveLift } from './exhaust-valve-lift.ts';
import { retainerToSeal } from './inputs.ts';
import { intakeValveLift } from './intake-valve-lift.ts';

export const retainerRoom = cell({
  id: 'retainerRoom',
  label: 'Reserve, retainer to seal',
  note: 'The gap left at full lift.',
  kind: scalar(gap),
  from: { retainerToSeal, intakeValveLift, exhaustValveLift },
  source: common('what is left at the larger of both lifts'),
  formula: 'retainerToSeal − the larger of intakeValveLift and exhaustValveLift',
  compute: ({ retainerToSeal, intakeValveLift, exhaustValveLift }) =>
    retainerReserve(retainerToSeal, Math.max(intakeValveLift, exhaustValveLift)),
});
