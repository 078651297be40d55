import { cell } from '../../src/graph/cell.ts';
import { structure } from '../../src/graph/kind.ts';
import type { Port } from '../../src/physics/flow/port.ts';
import { cite, heywood } from '../../src/references.ts';
import { intakeValveDiameter } from '../valves/inputs.ts';
import { intakeFlow, flowDepression } from './inputs.ts';
import { portOf } from './port.ts';

export const intakePort = cell({
  id: 'intakePort',
  label: 'Intake port',
  note: 'The area of a perfect opening that would pass what valve and port pass, lift by lift.',
  kind: structure<Port>(),
  from: { intakeFlow, flowDepression, intakeValveDiameter },
  source: cite(heywood, 'eq. C.8; without bench figures the coefficients of fig. 6-18, from memory, a guess'),
  formula: 'intakeFlow at flowDepression, or a share of the curtain around intakeValveDiameter',
  compute: ({ intakeFlow, flowDepression, intakeValveDiameter }) =>
    portOf('intake', intakeFlow, flowDepression, intakeValveDiameter),
});
