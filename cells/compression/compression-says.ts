import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import * as q from '../../src/units/quantity.ts';
import { crankingPressure } from './cranking-pressure.ts';
import { dynamicRatio } from './dynamic-ratio.ts';
import { strokeLost } from './stroke-lost.ts';

export const compressionSays = cell({
  id: 'compressionSays',
  label: 'Dynamic compression, in one line',
  note: 'What the chapter comes to, for when it is closed.',
  kind: remark,
  from: { dynamicRatio, strokeLost, crankingPressure },
  source: common('a summary'),
  formula: 'dynamicRatio, strokeLost, crankingPressure',
  compute: ({ dynamicRatio, strokeLost, crankingPressure }) =>
    phrase`${value(dynamicRatio, q.ratio)} to 1 once the valve is shut, ${value(strokeLost, q.share)} of the stroke gone; ${value(crankingPressure, q.gaugePressure)} on the gauge.`,
});
