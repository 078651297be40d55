import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { gap } from '../../src/units/quantity.ts';
import { inch, si } from '../../src/units/unit.ts';
import { springSolidHeight } from './inputs.ts';
import { coilBind } from './coil-bind.ts';

/** Common practice, no source. */
const least = si(0.06, inch);

export const coilBindRemark = cell({
  id: 'coilBindRemark',
  label: 'Reserve before the coils touch',
  note: 'How much further the spring could go at full lift.',
  kind: remark,
  from: { coilBind },
  source: common('least reserve 0.06 in'),
  formula: 'coilBind < 0.06 in',
  about: springSolidHeight,
  compute: ({ coilBind }) =>
    coilBind < least
      ? phrase`The spring comes near its solid height: ${value(coilBind, gap)} is left; ${value(least, gap)} is usual.`
      : null,
});
