import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { gap } from '../../src/units/quantity.ts';
import { inch, si } from '../../src/units/unit.ts';
import { retainerToSeal } from './inputs.ts';
import { retainerRoom } from './retainer-room.ts';

/** Common practice, no source. */
const least = si(0.05, inch);

export const retainerRoomRemark = cell({
  id: 'retainerRoomRemark',
  label: 'Reserve, retainer to seal',
  note: 'The gap left at full lift.',
  kind: remark,
  from: { retainerRoom },
  source: common('least reserve 0.05 in'),
  formula: 'retainerRoom < 0.05 in',
  about: retainerToSeal,
  compute: ({ retainerRoom }) =>
    retainerRoom < least
      ? phrase`The retainer comes near the seal: ${value(retainerRoom, gap)} is left; ${value(least, gap)} is usual.`
      : null,
});
