import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { fittedTo } from './fitted.ts';
import { fittedFactor, lossFactor, measuredTorque } from './inputs.ts';

export const lossFittedRemark = cell({
  id: 'lossFittedRemark',
  label: 'Whether the losses were fitted',
  note: 'A fitted figure is no longer a guess, and no longer a forecast either.',
  kind: remark,
  from: { lossFactor, fittedFactor, measuredTorque },
  source: common('what was asked for'),
  formula: 'measuredTorque, where fittedFactor names lossFactor',
  about: lossFactor,
  compute: ({ lossFactor, fittedFactor, measuredTorque }) =>
    fittedTo(lossFactor, fittedFactor === 'loss', measuredTorque),
});
