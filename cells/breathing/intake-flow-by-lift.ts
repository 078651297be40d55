import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { benchFlow, usualDepression } from '../../src/physics/flow/bench.ts';
import { openArea } from '../../src/physics/flow/port.ts';
import { cite, heywood } from '../../src/references.ts';
import { airFlow, gap } from '../../src/units/quantity.ts';
import { intakeValveLift } from '../valves/intake-valve-lift.ts';
import { intakePort } from './intake-port.ts';

const steps = 60;

export const intakeFlowByLift = cell({
  id: 'intakeFlowByLift',
  label: 'Intake flow against lift',
  note: 'At 28 inches of water, as the bench found it or as guessed, up to the last row or the full lift.',
  kind: curve(gap, airFlow, 'Valve lift'),
  from: { intakePort, intakeValveLift },
  source: cite(heywood, 'eq. C.8'),
  formula: 'the area of intakePort at 28 inches of water, to intakeValveLift or its last row',
  compute: ({ intakePort, intakeValveLift }) => {
    const end = Math.max(intakeValveLift, intakePort.lift.at(-1)!);
    const x = Float64Array.from({ length: steps + 1 }, (_, i) => (end * i) / steps);
    return { x, y: x.map((lift) => benchFlow(openArea(intakePort, lift), usualDepression)) };
  },
});
