import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { altitude } from '../air/inputs.ts';
import { cautionStart } from './caution-start.ts';
import { altitudeRelief } from './inputs.ts';

export const cautionStartHere = cell({
  id: 'cautionStartHere',
  label: 'Caution begins, here',
  note: 'With the relief for the altitude here.',
  kind: scalar(ratio),
  from: { cautionStart, altitudeRelief, altitude },
  source: common('relief by altitude'),
  formula: 'cautionStart + altitudeRelief × altitude',
  slider: [6, 11],
  compute: ({ cautionStart, altitudeRelief, altitude }) => cautionStart + altitudeRelief * altitude,
  examples: [{ given: { cautionStart: 7.5, altitudeRelief: 2e-4, altitude: 1000 }, gives: 7.7, within: 1e-12 }],
});
