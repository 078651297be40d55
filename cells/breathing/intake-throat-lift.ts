import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/flow/valve-area.ts';
import { cite, heywood } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { intakeValveDiameter } from '../valves/inputs.ts';
import { stemDiameter, throatShare, valveSeatAngle, valveSeatWidth } from './inputs.ts';
import { seatOf } from './valve-seat.ts';

export const intakeThroatLift = cell({
  id: 'intakeThroatLift',
  label: 'Intake lift where the throat takes over',
  short: 'Intake throat at',
  note: 'With more lift than this the throat is the narrowest place; a port mostly still gains, but less.',
  kind: scalar(gap),
  from: { intakeValveDiameter, throatShare, stemDiameter, valveSeatAngle, valveSeatWidth },
  source: cite(heywood, 'eqs. 6.8 and 6.9, from memory'),
  formula: 'the lift at which the area under the valve is that of the throat',
  compute: ({ intakeValveDiameter, ...seat }) => physics.throatLift(seatOf(intakeValveDiameter, seat)),
});
