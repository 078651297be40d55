import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { openArea } from '../../src/physics/flow/port.ts';
import { cite, heywood } from '../../src/references.ts';
import { angle, flowArea } from '../../src/units/quantity.ts';
import { exhaustLift } from '../valves/exhaust-lift.ts';
import { exhaustPort } from './exhaust-port.ts';

export const exhaustOpenArea = cell({
  id: 'exhaustOpenArea',
  label: 'Exhaust effective area',
  note: 'The exhaust valve as a perfect opening, through the gas exchange: what cam, rocker, valve and port leave the air.',
  kind: curve(angle, flowArea),
  from: { exhaustPort, exhaustLift },
  source: cite(heywood, 'eq. C.8'),
  formula: 'the area of exhaustPort at exhaustLift',
  compute: ({ exhaustPort, exhaustLift }) => ({
    x: exhaustLift.x,
    y: exhaustLift.y.map((lift) => openArea(exhaustPort, lift)),
  }),
});
