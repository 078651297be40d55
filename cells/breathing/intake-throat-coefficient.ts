import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { openArea } from '../../src/physics/flow/port.ts';
import { throatArea } from '../../src/physics/flow/valve-area.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { intakeValveDiameter } from '../valves/inputs.ts';
import { intakeValveLift } from '../valves/intake-valve-lift.ts';
import { stemDiameter, throatShare, valveSeatAngle, valveSeatWidth } from './inputs.ts';
import { intakePort } from './intake-port.ts';
import { opened } from './port.ts';
import { seatOf } from './valve-seat.ts';

export const intakeThroatCoefficient = cell({
  id: 'intakeThroatCoefficient',
  label: 'Intake flow coefficient, on the throat',
  short: 'Intake on throat',
  note: 'At full lift: what flows over what a perfect opening as large as the throat around the stem would pass. It ranks ports of different valves.',
  kind: scalar(ratio),
  from: {
    intakePort,
    intakeValveLift,
    intakeValveDiameter,
    throatShare,
    stemDiameter,
    valveSeatAngle,
    valveSeatWidth,
  },
  source: common('effective area over the area of the throat'),
  formula: 'the area of intakePort at intakeValveLift / the throat’s area around the stem',
  compute: ({ intakePort, intakeValveLift, intakeValveDiameter, ...seat }) =>
    openArea(intakePort, opened('intake', intakeValveLift)) / throatArea(seatOf(intakeValveDiameter, seat)),
});
