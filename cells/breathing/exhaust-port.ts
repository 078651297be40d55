import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import type { Port } from '../../src/physics/flow/port.ts';
import { cite, heywood } from '../../src/references.ts';
import { exhaustValveDiameter } from '../valves/inputs.ts';
import { exhaustFlow, flowDepression } from './inputs.ts';
import { portOf } from './port.ts';

export const exhaustPort = cell({
  id: 'exhaustPort',
  label: 'Exhaust port',
  note: 'The area of a perfect opening that would pass what valve and port pass, lift by lift.',
  kind: structure<Port>(),
  from: { exhaustFlow, flowDepression, exhaustValveDiameter },
  source: cite(heywood, 'eq. C.8; without bench figures the coefficients of fig. 6-18, from memory, a guess'),
  formula: 'exhaustFlow at flowDepression, or a share of the curtain around exhaustValveDiameter',
  compute: ({ exhaustFlow, flowDepression, exhaustValveDiameter }) =>
    portOf('exhaust', exhaustFlow, flowDepression, exhaustValveDiameter),
});
