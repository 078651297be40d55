import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { fittedTo } from './fitted.ts';
import { fittedFactor, flowFactor, measuredTorque } from './inputs.ts';

export const flowFittedRemark = cell({
  id: 'flowFittedRemark',
  label: 'Whether the flow was fitted',
  note: 'A fitted figure is no longer a guess, and no longer a forecast either.',
  kind: remark,
  from: { flowFactor, fittedFactor, measuredTorque },
  source: common('what was asked for'),
  formula: 'measuredTorque, where fittedFactor names flowFactor',
  about: flowFactor,
  compute: ({ flowFactor, fittedFactor, measuredTorque }) =>
    fittedTo(flowFactor, fittedFactor === 'flow', measuredTorque),
});
