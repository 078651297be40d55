import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { frictionTorque } from '../../src/physics/air/friction-torque.ts';
import { bowling, cite } from '../../src/references.ts';
import { torque } from '../../src/units/quantity.ts';
import { displacement } from '../block/displacement.ts';
import { meanPistonSpeed } from '../block/mean-piston-speed.ts';

export const typicalFriction = cell({
  id: 'typicalFriction',
  label: 'Friction torque, typical',
  note: 'From a table by piston speed, at the engine speed above: a stand-in where nobody has motored the engine.',
  kind: scalar(torque),
  from: { meanPistonSpeed, displacement },
  source: cite(bowling, 'table; its origin is not stated there'),
  formula: 'the table at meanPistonSpeed × displacement',
  valid: { meanPistonSpeed: [0, 35.56] },
  compute: ({ meanPistonSpeed, displacement }) => frictionTorque(meanPistonSpeed, displacement),
});
