import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { leastArea } from '../../src/physics/flow/valve-area.ts';
import { cite, heywood } from '../../src/references.ts';
import { flowArea } from '../../src/units/quantity.ts';
import { intakeValveDiameter } from '../valves/inputs.ts';
import { intakeValveLift } from '../valves/intake-valve-lift.ts';
import { stemDiameter, throatShare, valveSeatAngle, valveSeatWidth } from './inputs.ts';
import { seatOf } from './valve-seat.ts';

export const intakeLeastArea = cell({
  id: 'intakeLeastArea',
  label: 'Intake area at full lift, by geometry',
  short: 'Intake area',
  note: 'The narrowest place between valve and seat, or the throat around the stem where that is narrower.',
  kind: scalar(flowArea),
  from: { intakeValveDiameter, intakeValveLift, throatShare, stemDiameter, valveSeatAngle, valveSeatWidth },
  source: cite(heywood, 'eqs. 6.7-6.9, from memory'),
  formula: 'the least of cone, slant and throat at intakeValveLift',
  compute: ({ intakeValveDiameter, intakeValveLift, ...seat }) =>
    leastArea(seatOf(intakeValveDiameter, seat), intakeValveLift),
});
