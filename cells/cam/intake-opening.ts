import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { opening } from '../../src/physics/cam-events.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { degree, si } from '../../src/units/unit.ts';
import { intakeSeatDuration } from '../valves/intake-seat-duration.ts';
import { intakeSeatSkew } from '../valves/intake-seat-skew.ts';
import { typedEvent } from './event.ts';
import { eventsRead } from './events-read.ts';
import { intakeRamp } from './intake-ramp.ts';
import { camAdvance, camEntry, intakeCenterline, intakeDuration, intakeOpensAt } from './inputs.ts';

export const intakeOpening = cell({
  id: 'intakeOpening',
  label: 'Intake opening',
  note: 'Where the intake valve leaves its seat.',
  kind: scalar(angle, { short: 'BTDC', words: 'before top dead center' }),
  from: {
    camEntry,
    intakeSeatDuration,
    intakeSeatSkew,
    intakeDuration,
    intakeCenterline,
    intakeOpensAt,
    eventsRead,
    intakeRamp,
    camAdvance,
  },
  source: common('arithmetic of a symmetric lobe'),
  formula: 'intakeSeatDuration / 2 − intakeSeatSkew − intakeCenterline + camAdvance',
  slider: [si(-10, degree), si(60, degree)],
  compute: ({
    camEntry,
    intakeSeatDuration,
    intakeSeatSkew,
    intakeDuration,
    intakeCenterline,
    intakeOpensAt,
    eventsRead,
    intakeRamp,
    camAdvance,
  }) =>
    (camEntry === 'lobes'
      ? opening(intakeSeatDuration, intakeCenterline) - intakeSeatSkew
      : typedEvent(intakeOpensAt, eventsRead, 'seat', intakeRamp) + (intakeSeatDuration - intakeDuration) / 2) +
    camAdvance,
});
