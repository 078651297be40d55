import { chapter as declare, when } from '../../src/graph/chapter.ts';
import { camSays } from './cam-says.ts';
import { cardAgreement } from './card-agreement.ts';
import { exhaustCenterline } from './exhaust-centerline.ts';
import { exhaustClosing } from './exhaust-closing.ts';
import { exhaustOpening } from './exhaust-opening.ts';
import { exhaustRamp } from './exhaust-ramp.ts';
import { groundInAdvance } from './ground-in-advance.ts';
import {
  camAdvance,
  camEntry,
  eventsLift,
  exhaustClosesAt,
  exhaustDuration,
  exhaustDuration050,
  exhaustOpensAt,
  intakeCenterline,
  intakeClosesAt,
  intakeDuration,
  intakeDuration050,
  intakeOpensAt,
  lobeSeparation,
  seatLift,
  tappet,
} from './inputs.ts';
import { intakeCenterlineInstalled } from './intake-centerline-installed.ts';
import { intakeClosing050 } from './intake-closing050.ts';
import { intakeClosing } from './intake-closing.ts';
import { intakeOpening } from './intake-opening.ts';
import { intakeRamp } from './intake-ramp.ts';
import { overlap } from './overlap.ts';

export const chapter = declare({
  id: 'cam',
  number: 3,
  title: 'Camshaft',
  sentence: 'When the valves open and shut. Every figure depends on the lift it was read at.',
  fields: [
    camEntry,
    tappet,
    seatLift,
    intakeDuration,
    intakeDuration050,
    exhaustDuration,
    exhaustDuration050,
    lobeSeparation,
    intakeCenterline,
    camAdvance,
    eventsLift,
    ...when(camEntry, ['events', 'lobes'], intakeOpensAt, intakeClosesAt, exhaustOpensAt, exhaustClosesAt),
  ],
  answers: [
    intakeOpening,
    intakeClosing,
    exhaustOpening,
    exhaustClosing,
    intakeClosing050,
    intakeCenterlineInstalled,
    exhaustCenterline,
    overlap,
    groundInAdvance,
    intakeRamp,
    exhaustRamp,
    cardAgreement,
  ],
  says: camSays,
});
