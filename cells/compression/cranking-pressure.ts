import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { crankingGaugePressure } from '../../src/physics/compression.ts';
import { common } from '../../src/references.ts';
import { gaugePressure } from '../../src/units/quantity.ts';
import { psi, si } from '../../src/units/unit.ts';
import { stationPressure } from '../air/station-pressure.ts';
import { dynamicRatio } from './dynamic-ratio.ts';
import { crankingExponent } from './inputs.ts';

export const crankingPressure = cell({
  id: 'crankingPressure',
  label: 'Cranking pressure',
  note: 'On the gauge, ± 9 %: warm, throttle open, all plugs out, full battery. Evenness within 10 % says more than level.',
  kind: scalar(gaugePressure),
  from: { stationPressure, dynamicRatio, crankingExponent },
  source: common('a power law; 1.25 has no bias over 17 engines’ service data and 8.7 % rms'),
  formula: 'stationPressure × (dynamicRatio ^ crankingExponent − 1)',
  slider: [si(80, psi), si(260, psi)],
  compute: ({ stationPressure, dynamicRatio, crankingExponent }) =>
    crankingGaugePressure(stationPressure, dynamicRatio, crankingExponent),
});
