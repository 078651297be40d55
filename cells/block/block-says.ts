import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import * as q from '../../src/units/quantity.ts';
import { displacement } from './displacement.ts';
import { bore, cylinders, stroke } from './inputs.ts';

export const blockSays = cell({
  id: 'blockSays',
  label: 'Short block, in one line',
  note: 'What the chapter comes to, for when it is closed.',
  kind: remark,
  from: { cylinders, bore, stroke, displacement },
  source: common('a summary'),
  formula: 'cylinders, bore, stroke, displacement',
  compute: ({ cylinders, bore, stroke, displacement }) =>
    phrase`${value(cylinders, q.count)} cylinders, ${value(bore, q.length)} by ${value(stroke, q.length)}: ${value(displacement, q.displacementVolume)}.`,
});
