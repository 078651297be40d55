import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { cautionStart } from './caution-start.ts';
import { altitudeRelief, lowestAltitude } from './inputs.ts';

export const cautionStartLow = cell({
  id: 'cautionStartLow',
  label: 'Caution begins, taken down',
  note: 'At the lowest altitude it will see.',
  kind: scalar(ratio),
  from: { cautionStart, altitudeRelief, lowestAltitude },
  source: common('relief by altitude'),
  formula: 'cautionStart + altitudeRelief × lowestAltitude',
  slider: [6, 11],
  compute: ({ cautionStart, altitudeRelief, lowestAltitude }) => cautionStart + altitudeRelief * lowestAltitude,
  examples: [{ given: { cautionStart: 7.5, altitudeRelief: 2e-4, lowestAltitude: 1000 }, gives: 7.7, within: 1e-12 }],
});
