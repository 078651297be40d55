import { cell } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { openArea } from '../../src/physics/flow/port.ts';
import { cite, heywood } from '../../src/references.ts';
import { angle, flowArea } from '../../src/units/quantity.ts';
import { intakeLift } from '../valves/intake-lift.ts';
import { intakePort } from './intake-port.ts';

export const intakeOpenArea = cell({
  id: 'intakeOpenArea',
  label: 'Intake effective area',
  note: 'The intake valve as a perfect opening, through the gas exchange: what cam, rocker, valve and port leave the air.',
  kind: curve(angle, flowArea),
  from: { intakePort, intakeLift },
  source: cite(heywood, 'eq. C.8'),
  formula: 'the area of intakePort at intakeLift',
  compute: ({ intakePort, intakeLift }) => ({
    x: intakeLift.x,
    y: intakeLift.y.map((lift) => openArea(intakePort, lift)),
  }),
});
