import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/flow/valve-area.ts';
import { cite, heywood } from '../../src/references.ts';
import { gap } from '../../src/units/quantity.ts';
import { exhaustValveDiameter } from '../valves/inputs.ts';
import { stemDiameter, throatShare, valveSeatAngle, valveSeatWidth } from './inputs.ts';
import { seatOf } from './valve-seat.ts';

export const exhaustThroatLift = cell({
  id: 'exhaustThroatLift',
  label: 'Exhaust lift where the throat takes over',
  short: 'Exhaust throat at',
  note: 'With more lift than this the throat is the narrowest place; a port mostly still gains, but less.',
  kind: scalar(gap),
  from: { exhaustValveDiameter, throatShare, stemDiameter, valveSeatAngle, valveSeatWidth },
  source: cite(heywood, 'eqs. 6.8 and 6.9, from memory'),
  formula: 'the lift at which the area under the valve is that of the throat',
  compute: ({ exhaustValveDiameter, ...seat }) => physics.throatLift(seatOf(exhaustValveDiameter, seat)),
});
