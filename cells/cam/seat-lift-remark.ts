import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { inch, si } from '../../src/units/unit.ts';
import { seatLift, tappet } from './inputs.ts';

const between = si(0.0125, inch);

export const seatLiftRemark = cell({
  id: 'seatLiftRemark',
  label: 'Seat lift and tappets',
  note: 'Solid cards are printed at larger lifts than hydraulic ones.',
  kind: remark,
  from: { tappet, seatLift },
  source: common('0.006 in hydraulic, 0.020 in solid; the card decides'),
  formula: 'seatLift against the custom for these tappets',
  about: seatLift,
  compute: ({ tappet, seatLift }) =>
    tappet === 'solid' && seatLift < between
      ? [
          'Solid cards are mostly printed at 0.020 in: look at the card again. A solid’s valve lands where the lift equals its lash, so the card’s lift stands in for the seat here.',
        ]
      : tappet === 'hydraulic' && seatLift > between
        ? ['Hydraulic cards are mostly printed at 0.006 in: look at the card again.']
        : null,
});
