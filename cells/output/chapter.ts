import { chapter as declare, figure, when } from '../../src/graph/chapter.ts';
import { primaryTunedSpeed } from '../breathing/primary-tuned-speed.ts';
import { runnerTunedSpeedHigh } from '../breathing/runner-tuned-speed-high.ts';
import { runnerTunedSpeedLow } from '../breathing/runner-tuned-speed-low.ts';
import { runnerWaveSpeed } from '../breathing/runner-wave-speed.ts';
import { fit } from './fit.ts';
import * as fields from './inputs.ts';
import { outputSays } from './output-says.ts';
import { peakMeanPressure } from './peak-mean-pressure.ts';
import { peakPowerSpeed } from './peak-power-speed.ts';
import { peakPower } from './peak-power.ts';
import { peakTorqueSpeed } from './peak-torque-speed.ts';
import { peakTorque } from './peak-torque.ts';
import { powerCurve } from './power-curve.ts';
import { powerLevel } from './power-level.ts';
import { powerPerVolume } from './power-per-volume.ts';
import { residualCurve } from './residual-curve.ts';
import { torqueBand } from './torque-band.ts';
import { torqueCurve } from './torque-curve.ts';
import { compared, torqueDifference } from './torque-difference.ts';
import { torqueLevel } from './torque-level.ts';
import { unsettledSpeeds } from './unsettled-speeds.ts';
import { volumetricEfficiencyCurve } from './volumetric-efficiency-curve.ts';

export const chapter = declare({
  id: 'output',
  number: 9,
  title: 'Torque and power',
  sentence: 'What cam, ports and pipes make of the displacement, speed by speed, full throttle.',
  says: outputSays,
  fields: [
    fields.sparkEntry,
    ...when(fields.sparkEntry, ['total'], fields.totalSpark),
    ...when(fields.sparkEntry, ['table'], fields.sparkAdvance),
    fields.equivalenceRatio,
  ],
  answers: [peakTorque, peakTorqueSpeed, torqueLevel, peakPower, peakPowerSpeed, powerPerVolume, powerLevel],
  groups: [
    {
      title: 'The engine itself, and the speeds of the curve',
      fields: [fields.chamberStyle, fields.cylinderBanks, fields.curveFrom, fields.curveTo, fields.curveStep],
      answers: [peakMeanPressure],
    },
    {
      title: 'What the model assumes',
      fields: [
        fields.flowFactor,
        fields.burnFactor,
        fields.heatFactor,
        fields.frictionFactor,
        fields.lossFactor,
        fields.measuredTorque,
        fields.fittedFactor,
      ],
      answers: [],
    },
  ],
  actions: [fit],
  figures: [
    figure({
      id: 'figure-output',
      form: 'output',
      caption:
        'Torque and power, each speed held, in a band that about two engines in three fall inside: from what nobody knows of a single engine, never under 8 % (12 % under 2000 rpm). Differences between two builds are surer than levels.',
      from: { torqueCurve, powerCurve, unsettledSpeeds, peakTorque, peakTorqueSpeed, peakPower, peakPowerSpeed },
      later: { torqueBand },
      overlays: true,
    }),
    figure({
      id: 'figure-difference',
      form: 'difference',
      caption:
        'What one build makes more than the other, with what about two engines in three lie inside. Much of what each may be wrong by is the same in both, and drops out: a difference is surer than a level.',
      from: compared,
      compares: { join: torqueDifference },
    }),
    figure({
      id: 'figure-filling',
      form: 'filling',
      caption:
        'How full the cylinders get. Shaded and dotted: where simple rules tune runner and primary; valves and cam have their say as well.',
      from: {
        volumetricEfficiencyCurve,
        residualCurve,
        runnerTunedSpeedLow,
        runnerTunedSpeedHigh,
        runnerWaveSpeed,
        primaryTunedSpeed,
      },
    }),
  ],
  caution:
    'An estimate: single engines scatter by 8 % and more. Below 1600 rpm it reads high. Start a new engine with less spark than planned, and listen for knock.',
});
