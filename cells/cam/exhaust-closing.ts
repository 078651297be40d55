import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { opening } from '../../src/physics/cam-events.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { degree, si } from '../../src/units/unit.ts';
import { exhaustSeatDuration } from '../valves/exhaust-seat-duration.ts';
import { exhaustSeatSkew } from '../valves/exhaust-seat-skew.ts';
import { typedEvent } from './event.ts';
import { eventsRead } from './events-read.ts';
import { exhaustCenterline } from './exhaust-centerline.ts';
import { exhaustRamp } from './exhaust-ramp.ts';
import { camAdvance, camEntry, exhaustDuration, exhaustClosesAt } from './inputs.ts';

export const exhaustClosing = cell({
  id: 'exhaustClosing',
  label: 'Exhaust closing',
  note: 'Where the exhaust valve is back on its seat.',
  kind: scalar(angle, { short: 'ATDC', words: 'after top dead center' }),
  from: {
    camEntry,
    exhaustSeatDuration,
    exhaustSeatSkew,
    exhaustDuration,
    exhaustCenterline,
    exhaustClosesAt,
    eventsRead,
    exhaustRamp,
    camAdvance,
  },
  source: common('arithmetic of a symmetric lobe'),
  formula: 'exhaustSeatDuration / 2 + exhaustSeatSkew − exhaustCenterline',
  slider: [si(-10, degree), si(60, degree)],
  compute: ({
    camEntry,
    exhaustSeatDuration,
    exhaustSeatSkew,
    exhaustDuration,
    exhaustCenterline,
    exhaustClosesAt,
    eventsRead,
    exhaustRamp,
    camAdvance,
  }) =>
    camEntry === 'lobes'
      ? opening(exhaustSeatDuration, exhaustCenterline) + exhaustSeatSkew
      : typedEvent(exhaustClosesAt, eventsRead, 'seat', exhaustRamp) +
        (exhaustSeatDuration - exhaustDuration) / 2 -
        camAdvance,
});
