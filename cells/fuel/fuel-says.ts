import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import * as q from '../../src/units/quantity.ts';
import { cautionEnd } from './caution-end.ts';
import { cautionStart } from './caution-start.ts';
import { headMaterial } from './inputs.ts';
import { pumpOctane } from './pump-octane.ts';

export const fuelSays = cell({
  id: 'fuelSays',
  label: 'Fuel, in one line',
  note: 'What the chapter comes to, for when it is closed.',
  kind: remark,
  from: { pumpOctane, headMaterial, cautionStart, cautionEnd },
  source: common('a summary'),
  formula: 'pumpOctane, headMaterial, cautionStart, cautionEnd',
  compute: ({ pumpOctane, headMaterial, cautionStart, cautionEnd }) =>
    phrase`${value(pumpOctane, q.octane)} AKI, ${headMaterial} heads; the band is ${value(cautionStart, q.ratio)} to ${value(cautionEnd, q.ratio)} at sea level.`,
});
