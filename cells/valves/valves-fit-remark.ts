import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { bore } from '../block/inputs.ts';
import { exhaustValveDiameter, intakeValveDiameter } from './inputs.ts';

export const valvesFitRemark = cell({
  id: 'valvesFitRemark',
  label: 'Valves and bore',
  note: 'Two heads side by side have to fit over the bore.',
  kind: remark,
  from: { intakeValveDiameter, exhaustValveDiameter, bore },
  source: common('two circles beside each other in a larger one'),
  formula: 'intakeValveDiameter + exhaustValveDiameter > bore',
  about: intakeValveDiameter,
  compute: ({ intakeValveDiameter, exhaustValveDiameter, bore }) =>
    intakeValveDiameter + exhaustValveDiameter > bore
      ? ['Side by side these two valves are wider than the bore: look at both diameters.']
      : null,
});
