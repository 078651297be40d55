import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { openArea } from '../../src/physics/flow/port.ts';
import { curtainArea } from '../../src/physics/flow/valve-area.ts';
import { cite, heywood } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { intakeValveDiameter } from '../valves/inputs.ts';
import { intakeValveLift } from '../valves/intake-valve-lift.ts';
import { intakePort } from './intake-port.ts';
import { opened } from './port.ts';

export const intakeCurtainCoefficient = cell({
  id: 'intakeCurtainCoefficient',
  label: 'Intake flow coefficient, on the curtain',
  short: 'Intake on curtain',
  note: 'At full lift: what flows over what a perfect opening as large as the wall of a cylinder between valve and seat would pass. It falls as lift grows.',
  kind: scalar(ratio),
  from: { intakePort, intakeValveLift, intakeValveDiameter },
  source: cite(heywood, 'eq. 6.10, from memory'),
  formula: 'the area of intakePort at intakeValveLift / (π × intakeValveDiameter × intakeValveLift)',
  compute: ({ intakePort, intakeValveLift, intakeValveDiameter }) => {
    const lift = opened('intake', intakeValveLift);
    return openArea(intakePort, lift) / curtainArea(intakeValveDiameter, lift);
  },
});
