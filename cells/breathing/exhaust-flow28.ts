import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { benchFlow, usualDepression } from '../../src/physics/flow/bench.ts';
import { openArea } from '../../src/physics/flow/port.ts';
import { cite, heywood } from '../../src/references.ts';
import { airFlow } from '../../src/units/quantity.ts';
import { exhaustValveLift } from '../valves/exhaust-valve-lift.ts';
import { exhaustPort } from './exhaust-port.ts';
import { opened } from './port.ts';

export const exhaustFlow28 = cell({
  id: 'exhaustFlow28',
  label: 'Exhaust flow at full lift, 28 inches of water',
  short: 'Exhaust flow',
  note: 'At the lift of this cam and rocker. From another depression it is reckoned with air that thins out as it speeds up: a little less than the square root rule gives.',
  kind: scalar(airFlow),
  from: { exhaustPort, exhaustValveLift },
  source: cite(heywood, 'eq. C.8'),
  formula: 'the area of exhaustPort at exhaustValveLift, at 28 inches of water',
  compute: ({ exhaustPort, exhaustValveLift }) =>
    benchFlow(openArea(exhaustPort, opened('exhaust', exhaustValveLift)), usualDepression),
});
