import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { openArea } from '../../src/physics/flow/port.ts';
import { curtainArea } from '../../src/physics/flow/valve-area.ts';
import { cite, heywood } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { exhaustValveDiameter } from '../valves/inputs.ts';
import { exhaustValveLift } from '../valves/exhaust-valve-lift.ts';
import { exhaustPort } from './exhaust-port.ts';
import { opened } from './port.ts';

export const exhaustCurtainCoefficient = cell({
  id: 'exhaustCurtainCoefficient',
  label: 'Exhaust flow coefficient, on the curtain',
  short: 'Exhaust on curtain',
  note: 'At full lift: what flows over what a perfect opening as large as the wall of a cylinder between valve and seat would pass. It falls as lift grows.',
  kind: scalar(ratio),
  from: { exhaustPort, exhaustValveLift, exhaustValveDiameter },
  source: cite(heywood, 'eq. 6.10, from memory'),
  formula: 'the area of exhaustPort at exhaustValveLift / (π × exhaustValveDiameter × exhaustValveLift)',
  compute: ({ exhaustPort, exhaustValveLift, exhaustValveDiameter }) => {
    const lift = opened('exhaust', exhaustValveLift);
    return openArea(exhaustPort, lift) / curtainArea(exhaustValveDiameter, lift);
  },
});
