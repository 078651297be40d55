import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { fittedTo } from './fitted.ts';
import { fittedFactor, frictionFactor, measuredTorque } from './inputs.ts';

export const frictionFittedRemark = cell({
  id: 'frictionFittedRemark',
  label: 'Whether the friction was fitted',
  note: 'A fitted figure is no longer a guess, and no longer a forecast either.',
  kind: remark,
  from: { frictionFactor, fittedFactor, measuredTorque },
  source: common('what was asked for'),
  formula: 'measuredTorque, where fittedFactor names frictionFactor',
  about: frictionFactor,
  compute: ({ frictionFactor, fittedFactor, measuredTorque }) =>
    fittedTo(frictionFactor, fittedFactor === 'friction', measuredTorque),
});
