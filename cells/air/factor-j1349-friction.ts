import { cell } from '../../src/graph/cell.ts';
import { optional, scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/air/correction-factors.ts';
import { cite, j1349 } from '../../src/references.ts';
import { factor } from '../../src/units/quantity.ts';
import { dryPressure } from './dry-pressure.ts';
import { airTemperature, brakeTorque, frictionTorque } from './inputs.ts';

export const factorJ1349Friction = cell({
  id: 'factorJ1349Friction',
  label: 'SAE J1349, friction measured',
  note: 'Corrects only what the gas does: friction is the same in any air. It needs both torques.',
  kind: optional(scalar(factor)),
  from: { dryPressure, airTemperature, brakeTorque, frictionTorque },
  source: cite(j1349, 'sec. 5 (from memory)'),
  formula:
    '((brakeTorque + frictionTorque) × c − frictionTorque) / brakeTorque, c = (99 kPa / dryPressure) × √((t + 273) / 298)',
  valid: { airTemperature: [288.15, 308.15], dryPressure: [90_000, 105_000] },
  validValue: [0.93, 1.07],
  compute: ({ dryPressure, airTemperature, brakeTorque, frictionTorque }) =>
    brakeTorque === null || frictionTorque === null
      ? null
      : physics.factorJ1349Friction(dryPressure, airTemperature, brakeTorque, frictionTorque),
});
