import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { crownMinimum, reliefCut } from './inputs.ts';
import { crownLeft } from './crown-left.ts';

export const crownRemark = cell({
  id: 'crownRemark',
  label: 'Crown and cut',
  note: 'A thin crown burns through.',
  kind: remark,
  from: { crownLeft, crownMinimum },
  source: common('least crown'),
  formula: 'crownLeft < crownMinimum',
  about: reliefCut,
  compute: ({ crownLeft, crownMinimum }) =>
    crownLeft < crownMinimum ? ['This cut leaves too thin a crown: ask the piston’s maker.'] : null,
});
