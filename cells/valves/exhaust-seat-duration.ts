import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { durationAt } from '../../src/physics/valve/lobe.ts';
import { solidSeatLift } from '../../src/physics/valve/valve-lift.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { exhaustDuration, tappet } from '../cam/inputs.ts';
import { exhaustLash, rockerRatio } from './inputs.ts';
import { exhaustLobe } from './exhaust-lobe.ts';

export const exhaustSeatDuration = cell({
  id: 'exhaustSeatDuration',
  label: 'Exhaust duration on the seat',
  short: 'Exhaust seat',
  note: 'A hydraulic valve is taken to open and shut at the card’s seat lift; a solid’s lands where the lift equals its lash, so lash and rockers move it.',
  kind: scalar(angle),
  from: { tappet, exhaustDuration, exhaustLash, rockerRatio, exhaustLobe },
  source: common('a solid tappet takes up its lash first'),
  formula: 'exhaustDuration, or for a solid the duration at exhaustLash / rockerRatio',
  compute: ({ tappet, exhaustDuration, exhaustLash, rockerRatio, exhaustLobe }) =>
    tappet === 'hydraulic' || exhaustLobe === null || exhaustLash === 0
      ? exhaustDuration
      : durationAt(exhaustLobe, solidSeatLift(exhaustLash, rockerRatio)),
});
