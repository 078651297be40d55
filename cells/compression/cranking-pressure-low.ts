import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { standardPressure } from '../../src/physics/air/standard-atmosphere.ts';
import { crankingGaugePressure } from '../../src/physics/compression.ts';
import { common } from '../../src/references.ts';
import { gaugePressure } from '../../src/units/quantity.ts';
import { lowestAltitude } from '../fuel/inputs.ts';
import { dynamicRatio } from './dynamic-ratio.ts';
import { crankingExponent } from './inputs.ts';

export const crankingPressureLow = cell({
  id: 'crankingPressureLow',
  label: 'Cranking pressure, taken down',
  short: 'Cranking, low',
  note: 'The same engine in standard air at the lowest altitude it will see.',
  kind: scalar(gaugePressure),
  from: { lowestAltitude, dynamicRatio, crankingExponent },
  source: common('a power law, as above; pressure from the standard atmosphere (ISO 2533)'),
  formula: 'standard pressure at lowestAltitude × (dynamicRatio ^ crankingExponent − 1)',
  compute: ({ lowestAltitude, dynamicRatio, crankingExponent }) =>
    crankingGaugePressure(standardPressure(lowestAltitude), dynamicRatio, crankingExponent),
});
