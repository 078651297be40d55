import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { benchFlow, usualDepression } from '../../src/physics/flow/bench.ts';
import { openArea } from '../../src/physics/flow/port.ts';
import { cite, heywood } from '../../src/references.ts';
import { airFlow } from '../../src/units/quantity.ts';
import { intakeValveLift } from '../valves/intake-valve-lift.ts';
import { intakePort } from './intake-port.ts';
import { opened } from './port.ts';

export const intakeFlow28 = cell({
  id: 'intakeFlow28',
  label: 'Intake flow at full lift, 28 inches of water',
  short: 'Intake flow',
  note: 'At the lift of this cam and rocker. From another depression it is reckoned with air that thins out as it speeds up: a little less than the square root rule gives.',
  kind: scalar(airFlow),
  from: { intakePort, intakeValveLift },
  source: cite(heywood, 'eq. C.8'),
  formula: 'the area of intakePort at intakeValveLift, at 28 inches of water',
  compute: ({ intakePort, intakeValveLift }) =>
    benchFlow(openArea(intakePort, opened('intake', intakeValveLift)), usualDepression),
});
