import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { cautionEnd } from './caution-end.ts';
import { altitudeRelief, lowestAltitude } from './inputs.ts';

export const cautionEndLow = cell({
  id: 'cautionEndLow',
  label: 'Caution ends, taken down',
  note: 'At the lowest altitude it will see.',
  kind: scalar(ratio),
  from: { cautionEnd, altitudeRelief, lowestAltitude },
  source: common('relief by altitude'),
  formula: 'cautionEnd + altitudeRelief × lowestAltitude',
  slider: [6, 11],
  compute: ({ cautionEnd, altitudeRelief, lowestAltitude }) => cautionEnd + altitudeRelief * lowestAltitude,
  examples: [{ given: { cautionEnd: 7.5, altitudeRelief: 2e-4, lowestAltitude: 1000 }, gives: 7.7, within: 1e-12 }],
});
