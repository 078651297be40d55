import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { coilBindReserve } from '../../src/physics/valve/spring.ts';
import { common } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { exhaustValveLift } from './exhaust-valve-lift.ts';
import { springInstalledHeight, springSolidHeight } from './inputs.ts';
import { intakeValveLift } from './intake-valve-lift.ts';

export const coilBind = cell({
  id: 'coilBind',
  label: 'Reserve before the coils touch',
  note: 'How much further the spring could go at full lift.',
  kind: scalar(gap),
  from: { springInstalledHeight, springSolidHeight, intakeValveLift, exhaustValveLift },
  source: common('what is left at the larger of both lifts'),
  formula: 'springInstalledHeight − springSolidHeight − the larger of intakeValveLift and exhaustValveLift',
  compute: ({ springInstalledHeight, springSolidHeight, intakeValveLift, exhaustValveLift }) =>
    coilBindReserve(springInstalledHeight, springSolidHeight, Math.max(intakeValveLift, exhaustValveLift)),
});
