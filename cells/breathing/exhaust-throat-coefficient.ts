import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { openArea } from '../../src/physics/flow/port.ts';
import { throatArea } from '../../src/physics/flow/valve-area.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { exhaustValveDiameter } from '../valves/inputs.ts';
import { exhaustValveLift } from '../valves/exhaust-valve-lift.ts';
import { stemDiameter, throatShare, valveSeatAngle, valveSeatWidth } from './inputs.ts';
import { exhaustPort } from './exhaust-port.ts';
import { opened } from './port.ts';
import { seatOf } from './valve-seat.ts';

export const exhaustThroatCoefficient = cell({
  id: 'exhaustThroatCoefficient',
  label: 'Exhaust flow coefficient, on the throat',
  short: 'Exhaust on throat',
  note: 'At full lift: what flows over what a perfect opening as large as the throat around the stem would pass. It ranks ports of different valves.',
  kind: scalar(ratio),
  from: {
    exhaustPort,
    exhaustValveLift,
    exhaustValveDiameter,
    throatShare,
    stemDiameter,
    valveSeatAngle,
    valveSeatWidth,
  },
  source: common('effective area over the area of the throat'),
  formula: 'the area of exhaustPort at exhaustValveLift / the throat’s area around the stem',
  compute: ({ exhaustPort, exhaustValveLift, exhaustValveDiameter, ...seat }) =>
    openArea(exhaustPort, opened('exhaust', exhaustValveLift)) / throatArea(seatOf(exhaustValveDiameter, seat)),
});
