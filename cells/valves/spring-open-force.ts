import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { springForce } from '../../src/physics/valve/spring.ts';
import { common } from '../../src/references.ts';
import { force } from '../../src/units/quantity.ts';
import { springRate, springSeatForce } from './inputs.ts';
import { intakeValveLift } from './intake-valve-lift.ts';

export const springOpenForce = cell({
  id: 'springOpenForce',
  label: 'Spring force at full lift, intake',
  short: 'Open force',
  note: 'Force on the seat, and the rate times the lift.',
  kind: scalar(force),
  from: { springSeatForce, springRate, intakeValveLift },
  source: common('a straight spring'),
  formula: 'springSeatForce + springRate × intakeValveLift',
  compute: ({ springSeatForce, springRate, intakeValveLift }) =>
    springForce({ seatForce: springSeatForce, rate: springRate }, intakeValveLift),
  examples: [{ given: { springSeatForce: 500, springRate: 60000, intakeValveLift: 0.01 }, gives: 1100, within: 1e-9 }],
});
