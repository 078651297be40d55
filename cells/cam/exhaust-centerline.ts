import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/cam-events.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { camAdvance, camEntry, exhaustClosesAt, exhaustOpensAt, intakeCenterline, lobeSeparation } from './inputs.ts';

export const exhaustCenterline = cell({
  id: 'exhaustCenterline',
  label: 'Exhaust centerline, as installed',
  short: 'Exhaust center',
  note: 'Twice the lobe separation less the intake centerline; advance moves it away from the top.',
  kind: scalar(angle, { short: 'BTDC', words: 'before top dead center' }),
  from: { camEntry, lobeSeparation, intakeCenterline, exhaustOpensAt, exhaustClosesAt, camAdvance },
  source: common('separation is in cam degrees, half as many as the crank’s'),
  formula: '2 × lobeSeparation − intakeCenterline + camAdvance, or the middle of both events + camAdvance',
  compute: ({ camEntry, lobeSeparation, intakeCenterline, exhaustOpensAt, exhaustClosesAt, camAdvance }) =>
    (camEntry === 'lobes'
      ? physics.exhaustCenterline(lobeSeparation, intakeCenterline)
      : (Math.PI + exhaustOpensAt - exhaustClosesAt) / 2) + camAdvance,
});
