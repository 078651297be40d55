import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { exhaustValveDiameter } from '../valves/inputs.ts';
import { exhaustValveLift } from '../valves/exhaust-valve-lift.ts';
import { flowWords } from './flow-words.ts';
import { exhaustFlow, flowDepression } from './inputs.ts';

export const exhaustFlowRemark = cell({
  id: 'exhaustFlowRemark',
  label: 'Exhaust flow and valve',
  note: 'What the table leaves open, and what it cannot mean.',
  kind: remark,
  from: { exhaustFlow, flowDepression, exhaustValveDiameter, exhaustValveLift },
  source: common('no port flows more than a perfect opening as large as its curtain'),
  formula: 'exhaustFlow at flowDepression against the curtain around exhaustValveDiameter and exhaustValveLift',
  about: exhaustFlow,
  compute: ({ exhaustFlow, flowDepression, exhaustValveDiameter, exhaustValveLift }) =>
    flowWords({
      rows: exhaustFlow,
      depression: flowDepression,
      diameter: exhaustValveDiameter,
      lift: exhaustValveLift,
    }),
});
