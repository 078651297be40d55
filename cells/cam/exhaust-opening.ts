import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { closing } from '../../src/physics/cam-events.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { degree, si } from '../../src/units/unit.ts';
import { exhaustSeatDuration } from '../valves/exhaust-seat-duration.ts';
import { exhaustSeatSkew } from '../valves/exhaust-seat-skew.ts';
import { typedEvent } from './event.ts';
import { eventsRead } from './events-read.ts';
import { exhaustCenterline } from './exhaust-centerline.ts';
import { exhaustRamp } from './exhaust-ramp.ts';
import { camAdvance, camEntry, exhaustDuration, exhaustOpensAt } from './inputs.ts';

export const exhaustOpening = cell({
  id: 'exhaustOpening',
  label: 'Exhaust opening',
  note: 'Where the exhaust valve leaves its seat and the power stroke ends early.',
  kind: scalar(angle, { short: 'BBDC', words: 'before bottom dead center' }),
  from: {
    camEntry,
    exhaustSeatDuration,
    exhaustSeatSkew,
    exhaustDuration,
    exhaustCenterline,
    exhaustOpensAt,
    eventsRead,
    exhaustRamp,
    camAdvance,
  },
  source: common('arithmetic of a symmetric lobe'),
  formula: 'exhaustSeatDuration / 2 − exhaustSeatSkew + exhaustCenterline − 180°',
  slider: [si(30, degree), si(100, degree)],
  compute: ({
    camEntry,
    exhaustSeatDuration,
    exhaustSeatSkew,
    exhaustDuration,
    exhaustCenterline,
    exhaustOpensAt,
    eventsRead,
    exhaustRamp,
    camAdvance,
  }) =>
    camEntry === 'lobes'
      ? closing(exhaustSeatDuration, exhaustCenterline) - exhaustSeatSkew
      : typedEvent(exhaustOpensAt, eventsRead, 'seat', exhaustRamp) +
        (exhaustSeatDuration - exhaustDuration) / 2 +
        camAdvance,
});
