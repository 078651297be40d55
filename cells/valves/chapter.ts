import { chapter as declare, figure, when } from '../../src/graph/chapter.ts';
import { linkage } from '../block/linkage.ts';
import { exhaustClosing } from '../cam/exhaust-closing.ts';
import { exhaustOpening } from '../cam/exhaust-opening.ts';
import { tappet } from '../cam/inputs.ts';
import { intakeClosing } from '../cam/intake-closing.ts';
import { intakeOpening } from '../cam/intake-opening.ts';
import { overlap } from '../cam/overlap.ts';
import { advanceLeft } from './advance-left.ts';
import { coilBind } from './coil-bind.ts';
import { crownLeft } from './crown-left.ts';
import { cutLeft } from './cut-left.ts';
import { exhaustClearanceAngle } from './exhaust-clearance-angle.ts';
import { exhaustClearanceVerdict } from './exhaust-clearance-verdict.ts';
import { exhaustClearance } from './exhaust-clearance.ts';
import { exhaustDurationAtLift } from './exhaust-duration-at-lift.ts';
import { exhaustGap } from './exhaust-gap.ts';
import { exhaustLiftArea } from './exhaust-lift-area.ts';
import { exhaustLift } from './exhaust-lift.ts';
import { exhaustRadialClearance } from './exhaust-radial-clearance.ts';
import { exhaustRest } from './exhaust-rest.ts';
import { exhaustSeatDuration } from './exhaust-seat-duration.ts';
import { exhaustValveLift } from './exhaust-valve-lift.ts';
import * as fields from './inputs.ts';
import { intakeAcceleration } from './intake-acceleration.ts';
import { intakeClearanceAngle } from './intake-clearance-angle.ts';
import { intakeClearanceVerdict } from './intake-clearance-verdict.ts';
import { intakeClearance } from './intake-clearance.ts';
import { intakeDurationAtLift } from './intake-duration-at-lift.ts';
import { intakeGap } from './intake-gap.ts';
import { intakeLiftArea } from './intake-lift-area.ts';
import { intakeLift } from './intake-lift.ts';
import { intakeRadialClearance } from './intake-radial-clearance.ts';
import { intakeRest } from './intake-rest.ts';
import { intakeSeatDuration } from './intake-seat-duration.ts';
import { intakeValveLift } from './intake-valve-lift.ts';
import { intakeVelocity } from './intake-velocity.ts';
import { overlapArea } from './overlap-area.ts';
import { reliefCutVolume } from './relief-cut-volume.ts';
import { retardLeft } from './retard-left.ts';
import { retainerRoom } from './retainer-room.ts';
import { rockerRatioMost } from './rocker-ratio-most.ts';
import { separationSpeed } from './separation-speed.ts';
import { springOpenForce } from './spring-open-force.ts';
import { valvesSays } from './valves-says.ts';

export const chapter = declare({
  id: 'valves',
  number: 7,
  title: 'Valve motion and clearance',
  sentence: 'How far the valves open, when, and how near they come to the pistons.',
  says: valvesSays,
  fields: [
    fields.lobeSource,
    ...when(fields.lobeSource, ['card'], fields.intakeLobeLift, fields.exhaustLobeLift),
    ...when(fields.lobeSource, ['table'], fields.lobeTableAngles, fields.intakeLobeTable, fields.exhaustLobeTable),
    fields.rockerRatio,
    ...when(tappet, ['solid'], fields.intakeLash, fields.exhaustLash),
    fields.crownAtValve,
    ...when(fields.crownAtValve, ['relief'], fields.intakeReliefDepth, fields.exhaustReliefDepth, fields.reliefCut),
  ],
  answers: [
    intakeClearance,
    intakeClearanceAngle,
    intakeClearanceVerdict,
    exhaustClearance,
    exhaustClearanceAngle,
    exhaustClearanceVerdict,
    advanceLeft,
    retardLeft,
    rockerRatioMost,
    cutLeft,
    reliefCutVolume,
  ],
  groups: [
    {
      title: 'Where the valves sit',
      fields: [
        fields.intakeSeatDepth,
        fields.exhaustSeatDepth,
        fields.intakeValveAngle,
        fields.exhaustValveAngle,
        intakeRest,
        exhaustRest,
      ],
      answers: [],
    },
    {
      title: 'Least clearances',
      fields: [fields.intakeMinimum, fields.exhaustMinimum, fields.clearanceAluminum],
      answers: [],
    },
    {
      title: 'Valve heads in their reliefs',
      fields: [
        fields.intakeValveDiameter,
        fields.exhaustValveDiameter,
        ...when(
          fields.crownAtValve,
          ['relief'],
          fields.intakeReliefDiameter,
          fields.exhaustReliefDiameter,
          fields.radialMinimum,
          fields.crownThickness,
          fields.crownMinimum,
        ),
      ],
      answers: [intakeRadialClearance, exhaustRadialClearance, crownLeft],
    },
    {
      title: 'Lift, duration and area',
      fields: [
        fields.readAtLift,
        ...when(fields.lobeSource, ['card'], fields.intakeDuration200, fields.exhaustDuration200),
      ],
      answers: [
        intakeValveLift,
        exhaustValveLift,
        intakeSeatDuration,
        exhaustSeatDuration,
        intakeDurationAtLift,
        exhaustDurationAtLift,
        intakeLiftArea,
        exhaustLiftArea,
        overlapArea,
      ],
    },
    {
      title: 'Springs',
      fields: [
        fields.springSeatForce,
        fields.springRate,
        fields.valveSideMass,
        fields.springInstalledHeight,
        fields.springSolidHeight,
        fields.retainerToSeal,
      ],
      answers: [springOpenForce, coilBind, retainerRoom, separationSpeed],
    },
  ],
  figures: [
    figure({
      id: 'figure-lifts',
      form: 'lifts',
      crank: 'shows',
      caption:
        'Both valves’ lift through the gas exchange, with the piston under them. Where the curves cross, both are open.',
      from: { intakeLift, exhaustLift, linkage, overlap, overlapArea },
    }),
    figure({
      id: 'figure-gaps',
      form: 'gaps',
      crank: 'shows',
      caption:
        'The gap between valve and piston around the top of the exhaust stroke, both valves. Inside a lined band it is under its minimum.',
      from: {
        intakeGap,
        exhaustGap,
        intakeClearanceVerdict,
        exhaustClearanceVerdict,
        intakeClearanceAngle,
        exhaustClearanceAngle,
      },
    }),
    figure({
      id: 'figure-events',
      form: 'events',
      crank: 'shows',
      caption: 'The four events on two turns of the crank, unrolled: each bar is a valve off its seat.',
      from: { intakeOpening, intakeClosing, exhaustOpening, exhaustClosing },
    }),
    figure({
      id: 'figure-motion',
      form: 'motion',
      caption:
        'Intake velocity above, acceleration below, at the valve, from the lobe’s peak. Where acceleration is negative only the spring slows the valve.',
      from: { intakeVelocity, intakeAcceleration },
    }),
  ],
  caution:
    'Clay or light checking springs on the real engine decide, before it turns. Rods stretch, valves float, and belts and chains let cams drift.',
});
