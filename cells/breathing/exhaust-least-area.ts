import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { leastArea } from '../../src/physics/flow/valve-area.ts';
import { cite, heywood } from '../../src/references.ts';
import { flowArea } from '../../src/units/quantity.ts';
import { exhaustValveDiameter } from '../valves/inputs.ts';
import { exhaustValveLift } from '../valves/exhaust-valve-lift.ts';
import { stemDiameter, throatShare, valveSeatAngle, valveSeatWidth } from './inputs.ts';
import { seatOf } from './valve-seat.ts';

export const exhaustLeastArea = cell({
  id: 'exhaustLeastArea',
  label: 'Exhaust area at full lift, by geometry',
  short: 'Exhaust area',
  note: 'The narrowest place between valve and seat, or the throat around the stem where that is narrower.',
  kind: scalar(flowArea),
  from: { exhaustValveDiameter, exhaustValveLift, throatShare, stemDiameter, valveSeatAngle, valveSeatWidth },
  source: cite(heywood, 'eqs. 6.7-6.9, from memory'),
  formula: 'the least of cone, slant and throat at exhaustValveLift',
  compute: ({ exhaustValveDiameter, exhaustValveLift, ...seat }) =>
    leastArea(seatOf(exhaustValveDiameter, seat), exhaustValveLift),
});
