import { chapter as declare, when } from '../../src/graph/chapter.ts';
import { breathingSays } from './breathing-says.ts';
import { carburetorDemand } from './carburetor-demand.ts';
import { carburetorDrop } from './carburetor-drop.ts';
import { carburetorVerdict } from './carburetor-verdict.ts';
import { depressionFactor } from './depression-factor.ts';
import { exhaustCurtainCoefficient } from './exhaust-curtain-coefficient.ts';
import { exhaustFlowByLift } from './exhaust-flow-by-lift.ts';
import { exhaustFlow28 } from './exhaust-flow28.ts';
import { exhaustLeastArea } from './exhaust-least-area.ts';
import { exhaustThroatCoefficient } from './exhaust-throat-coefficient.ts';
import { exhaustThroatLift } from './exhaust-throat-lift.ts';
import { flowRatio } from './flow-ratio.ts';
import { inletMachIndex } from './inlet-mach-index.ts';
import * as fields from './inputs.ts';
import { intakeCurtainCoefficient } from './intake-curtain-coefficient.ts';
import { intakeFlowByLift } from './intake-flow-by-lift.ts';
import { intakeFlow28 } from './intake-flow28.ts';
import { intakeLeastArea } from './intake-least-area.ts';
import { intakeThroatCoefficient } from './intake-throat-coefficient.ts';
import { intakeThroatLift } from './intake-throat-lift.ts';
import { meanFlowCoefficient } from './mean-flow-coefficient.ts';
import { meanInletMach } from './mean-inlet-mach.ts';
import { primaryTunedSpeed } from './primary-tuned-speed.ts';
import { runnerSpeed } from './runner-speed.ts';
import { runnerTunedSpeedHigh } from './runner-tuned-speed-high.ts';
import { runnerTunedSpeedLow } from './runner-tuned-speed-low.ts';
import { runnerWaveSpeed } from './runner-wave-speed.ts';

export const chapter = declare({
  id: 'breathing',
  number: 8,
  title: 'Breathing',
  sentence: 'What heads, runners, primaries and carburetor let through, and at what speed they help.',
  says: breathingSays,
  fields: [
    fields.intakeFlow,
    fields.exhaustFlow,
    fields.flowDepression,
    fields.runnerLength,
    fields.runnerDiameter,
    fields.carburetorFlow,
    fields.carburetorRating,
    fields.manifoldType,
    fields.primaryLength,
    fields.primaryDiameter,
    fields.trim,
    ...when(fields.trim, ['street'], fields.exhaustBackPressure),
  ],
  answers: [
    intakeFlow28,
    exhaustFlow28,
    flowRatio,
    inletMachIndex,
    meanInletMach,
    runnerSpeed,
    carburetorDemand,
    carburetorDrop,
    carburetorVerdict,
    intakeFlowByLift,
    exhaustFlowByLift,
  ],
  groups: [
    {
      title: 'Volumes, losses and collector',
      fields: [
        fields.plenumVolume,
        fields.runnerLoss,
        fields.primaryLoss,
        fields.crankLayout,
        fields.collectorLength,
        fields.collectorDiameter,
      ],
      answers: [],
    },
    {
      title: 'Tuned speeds by simple rules',
      fields: [fields.runnerSwings, fields.primarySoundSpeed],
      answers: [runnerTunedSpeedLow, runnerTunedSpeedHigh, runnerWaveSpeed, primaryTunedSpeed],
    },
    {
      title: 'Valve seats and throats',
      fields: [fields.throatShare, fields.stemDiameter, fields.valveSeatAngle, fields.valveSeatWidth],
      answers: [
        meanFlowCoefficient,
        intakeCurtainCoefficient,
        exhaustCurtainCoefficient,
        intakeThroatCoefficient,
        exhaustThroatCoefficient,
        intakeLeastArea,
        exhaustLeastArea,
        intakeThroatLift,
        exhaustThroatLift,
        depressionFactor,
      ],
    },
    {
      title: 'What the carburetor is judged by',
      fields: [fields.assumedVolumetricEfficiency, fields.carburetorLarge, fields.carburetorSmall],
      answers: [],
    },
  ],
  caution: 'Tuned speeds are first guesses: valves, cam and the other pipes shift them. A dyno decides.',
});
