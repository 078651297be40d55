import { cell } from '../../src/graph/cell.ts';
import { optional, scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { root } from '../../src/numerics/root.ts';
import { crankingGaugePressure } from '../../src/physics/compression.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { stationPressure } from '../air/station-pressure.ts';
import { dynamicRatio } from './dynamic-ratio.ts';
import { gaugeReading } from './inputs.ts';

export const gaugeExponent = cell({
  id: 'gaugeExponent',
  label: 'Exponent my gauge makes',
  note: 'Write it into the cranking exponent, and later figures follow your own gauge.',
  kind: optional(scalar(ratio)),
  from: { gaugeReading, stationPressure, dynamicRatio },
  source: common('the power law, turned around'),
  formula: 'the exponent at which stationPressure × (dynamicRatio ^ exponent − 1) is gaugeReading',
  validValue: [1.15, 1.35],
  compute: ({ gaugeReading, stationPressure, dynamicRatio }) => {
    if (gaugeReading === null) return null;
    const found = root((n) => crankingGaugePressure(stationPressure, dynamicRatio, n) - gaugeReading, 0.5, 2);
    if (found === null)
      throw new Impossible(
        ['No exponent makes this reading from this ratio: look at the gauge or the closing again.'],
        'gaugeReading',
      );
    return found;
  },
});
