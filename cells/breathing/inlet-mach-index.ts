import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/flow/inlet-mach.ts';
import { soundSpeed } from '../../src/physics/flow/still-air.ts';
import { cite, taylor } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { airTemperature } from '../air/inputs.ts';
import { bore } from '../block/inputs.ts';
import { meanPistonSpeed } from '../block/mean-piston-speed.ts';
import { intakeValveDiameter } from '../valves/inputs.ts';
import { meanFlowCoefficient } from './mean-flow-coefficient.ts';

export const inletMachIndex = cell({
  id: 'inletMachIndex',
  label: 'Inlet Mach index Z, after Taylor',
  short: 'Mach index Z',
  note: 'The piston’s speed, brought to the valve’s mean effective area, over the speed of sound, at the engine speed of the first chapter. Short, untuned inlets begin to lose filling from about 0.5 to 0.6; tuning and a late closing carry it farther.',
  kind: scalar(ratio),
  from: { bore, intakeValveDiameter, meanPistonSpeed, meanFlowCoefficient, airTemperature },
  source: cite(taylor, 'ch. 6, from memory'),
  formula: '(bore / intakeValveDiameter)² × meanPistonSpeed / (meanFlowCoefficient × speed of sound at airTemperature)',
  compute: ({ bore, intakeValveDiameter, meanPistonSpeed, meanFlowCoefficient, airTemperature }) =>
    physics.inletMachIndex({
      bore,
      valveDiameter: intakeValveDiameter,
      flowCoefficient: meanFlowCoefficient,
      meanPistonSpeed,
      soundSpeed: soundSpeed(airTemperature),
    }),
});
