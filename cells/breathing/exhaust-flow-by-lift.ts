import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { benchFlow, usualDepression } from '../../src/physics/flow/bench.ts';
import { openArea } from '../../src/physics/flow/port.ts';
import { cite, heywood } from '../../src/references.ts';
import { airFlow, gap } from '../../src/units/quantity.ts';
import { exhaustValveLift } from '../valves/exhaust-valve-lift.ts';
import { exhaustPort } from './exhaust-port.ts';

const steps = 60;

export const exhaustFlowByLift = cell({
  id: 'exhaustFlowByLift',
  label: 'Exhaust flow against lift',
  note: 'At 28 inches of water, as the bench found it or as guessed, up to the last row or the full lift.',
  kind: curve(gap, airFlow, 'Valve lift'),
  from: { exhaustPort, exhaustValveLift },
  source: cite(heywood, 'eq. C.8'),
  formula: 'the area of exhaustPort at 28 inches of water, to exhaustValveLift or its last row',
  compute: ({ exhaustPort, exhaustValveLift }) => {
    const end = Math.max(exhaustValveLift, exhaustPort.lift.at(-1)!);
    const x = Float64Array.from({ length: steps + 1 }, (_, i) => (end * i) / steps);
    return { x, y: x.map((lift) => benchFlow(openArea(exhaustPort, lift), usualDepression)) };
  },
});
