import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { intakeClosing } from '../cam/intake-closing.ts';

export const closingRemark = cell({
  id: 'closingRemark',
  label: 'Early closing',
  note: 'A valve that shuts before the bottom traps less than the cylinder holds.',
  kind: remark,
  from: { intakeClosing },
  source: common('Miller or Atkinson timing'),
  formula: 'intakeClosing ≤ 0',
  about: intakeClosing,
  compute: ({ intakeClosing }) =>
    intakeClosing <= 0
      ? [
          'The valve shuts at or before bottom dead center. That can be meant; if not, look at the centerline and the advance again.',
        ]
      : null,
});
