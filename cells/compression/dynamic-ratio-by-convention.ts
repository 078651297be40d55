import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { dynamicRatioAt050Plus } from './dynamic-ratio-at050-plus.ts';
import { dynamicRatioAt050 } from './dynamic-ratio-at050.ts';
import { dynamicRatio } from './dynamic-ratio.ts';
import { closingConvention } from './inputs.ts';

export const dynamicRatioByConvention = cell({
  id: 'dynamicRatioByConvention',
  label: 'Dynamic ratio, by the chosen closing',
  note: 'The three differ by a whole ratio on one engine: say which you mean.',
  kind: scalar(ratio),
  from: { closingConvention, dynamicRatio, dynamicRatioAt050, dynamicRatioAt050Plus },
  source: common('conventions in use'),
  formula: 'dynamicRatio, dynamicRatioAt050 or dynamicRatioAt050Plus, by closingConvention',
  slider: [6, 11],
  compute: ({ closingConvention, dynamicRatio, dynamicRatioAt050, dynamicRatioAt050Plus }) =>
    closingConvention === 'seat'
      ? dynamicRatio
      : closingConvention === 'at050'
        ? dynamicRatioAt050
        : dynamicRatioAt050Plus,
});
