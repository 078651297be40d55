import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { ratio } from '../../src/units/quantity.ts';
import { altitude } from '../air/inputs.ts';
import { cautionEnd } from './caution-end.ts';
import { altitudeRelief } from './inputs.ts';

export const cautionEndHere = cell({
  id: 'cautionEndHere',
  label: 'Caution ends, here',
  note: 'With the relief for the altitude here.',
  kind: scalar(ratio),
  from: { cautionEnd, altitudeRelief, altitude },
  source: common('relief by altitude'),
  formula: 'cautionEnd + altitudeRelief × altitude',
  slider: [6, 11],
  compute: ({ cautionEnd, altitudeRelief, altitude }) => cautionEnd + altitudeRelief * altitude,
  examples: [{ given: { cautionEnd: 7.5, altitudeRelief: 2e-4, altitude: 1000 }, gives: 7.7, within: 1e-12 }],
});
