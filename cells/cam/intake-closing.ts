import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { closing } from '../../src/physics/cam-events.ts';
import { common } from '../../src/references.ts';
import { angle } from '../../src/units/quantity.ts';
import { degree, si } from '../../src/units/unit.ts';
import { intakeSeatDuration } from '../valves/intake-seat-duration.ts';
import { intakeSeatSkew } from '../valves/intake-seat-skew.ts';
import { typedEvent } from './event.ts';
import { eventsRead } from './events-read.ts';
import { intakeRamp } from './intake-ramp.ts';
import { camAdvance, camEntry, intakeCenterline, intakeClosesAt, intakeDuration, intakeDuration050 } from './inputs.ts';

export const intakeClosing = cell({
  id: 'intakeClosing',
  label: 'Intake closing',
  note: 'Where the intake valve is back on its seat and compression begins: from here on the fuel feels it.',
  kind: scalar(angle, { short: 'ABDC', words: 'after bottom dead center' }),
  from: {
    camEntry,
    intakeSeatDuration,
    intakeSeatSkew,
    intakeDuration,
    intakeCenterline,
    intakeClosesAt,
    eventsRead,
    intakeRamp,
    camAdvance,
  },
  source: common('arithmetic of a symmetric lobe'),
  formula: 'intakeSeatDuration / 2 + intakeSeatSkew + intakeCenterline − 180° − camAdvance',
  slider: [si(40, degree), si(80, degree)],
  movedBy: [
    { label: 'the cam', inputs: [camAdvance], straight: true },
    { label: 'the duration', inputs: [intakeDuration, intakeDuration050] },
  ],
  compute: ({
    camEntry,
    intakeSeatDuration,
    intakeSeatSkew,
    intakeDuration,
    intakeCenterline,
    intakeClosesAt,
    eventsRead,
    intakeRamp,
    camAdvance,
  }) =>
    (camEntry === 'lobes'
      ? closing(intakeSeatDuration, intakeCenterline) + intakeSeatSkew
      : typedEvent(intakeClosesAt, eventsRead, 'seat', intakeRamp) + (intakeSeatDuration - intakeDuration) / 2) -
    camAdvance,
});
