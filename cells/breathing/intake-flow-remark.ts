import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { intakeValveDiameter } from '../valves/inputs.ts';
import { intakeValveLift } from '../valves/intake-valve-lift.ts';
import { flowWords } from './flow-words.ts';
import { intakeFlow, flowDepression } from './inputs.ts';

export const intakeFlowRemark = cell({
  id: 'intakeFlowRemark',
  label: 'Intake flow and valve',
  note: 'What the table leaves open, and what it cannot mean.',
  kind: remark,
  from: { intakeFlow, flowDepression, intakeValveDiameter, intakeValveLift },
  source: common('no port flows more than a perfect opening as large as its curtain'),
  formula: 'intakeFlow at flowDepression against the curtain around intakeValveDiameter and intakeValveLift',
  about: intakeFlow,
  compute: ({ intakeFlow, flowDepression, intakeValveDiameter, intakeValveLift }) =>
    flowWords({
      rows: intakeFlow,
      depression: flowDepression,
      diameter: intakeValveDiameter,
      lift: intakeValveLift,
    }),
});
