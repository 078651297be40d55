import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { fittedTo } from './fitted.ts';
import { burnFactor, fittedFactor, measuredTorque } from './inputs.ts';

export const burnFittedRemark = cell({
  id: 'burnFittedRemark',
  label: 'Whether the time to burn was fitted',
  note: 'A fitted figure is no longer a guess, and no longer a forecast either.',
  kind: remark,
  from: { burnFactor, fittedFactor, measuredTorque },
  source: common('what was asked for'),
  formula: 'measuredTorque, where fittedFactor names burnFactor',
  about: burnFactor,
  compute: ({ burnFactor, fittedFactor, measuredTorque }) =>
    fittedTo(burnFactor, fittedFactor === 'burn', measuredTorque),
});
