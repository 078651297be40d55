import { chapter as declare, figure, when } from '../../src/graph/chapter.ts';
import { engineSpeed } from '../block/inputs.ts';
import { primaryTunedSpeed } from '../breathing/primary-tuned-speed.ts';
import { runnerTunedSpeedHigh } from '../breathing/runner-tuned-speed-high.ts';
import { runnerTunedSpeedLow } from '../breathing/runner-tuned-speed-low.ts';
import { runnerWaveSpeed } from '../breathing/runner-wave-speed.ts';
import { brakePressureAtSpeed } from './brake-pressure-at-speed.ts';
import { cylinderLoop } from './cylinder-loop.ts';
import { frictionPressureAtSpeed } from './friction-pressure-at-speed.ts';
import { fuelFlowAtSpeed } from './fuel-flow-at-speed.ts';
import { indicatedPressureAtSpeed } from './indicated-pressure-at-speed.ts';
import * as fields from './inputs.ts';
import { outputSays } from './output-says.ts';
import { peakCylinderPressure } from './peak-cylinder-pressure.ts';
import { peakMeanPressure } from './peak-mean-pressure.ts';
import { peakPowerSpeed } from './peak-power-speed.ts';
import { peakPower } from './peak-power.ts';
import { peakTorqueSpeed } from './peak-torque-speed.ts';
import { peakTorque } from './peak-torque.ts';
import { powerAtSpeed } from './power-at-speed.ts';
import { powerCurve } from './power-curve.ts';
import { powerLevel } from './power-level.ts';
import { powerPerVolume } from './power-per-volume.ts';
import { pumpingPressureAtSpeed } from './pumping-pressure-at-speed.ts';
import { residualAtSpeed } from './residual-at-speed.ts';
import { residualCurve } from './residual-curve.ts';
import { specificFuelAtSpeed } from './specific-fuel-at-speed.ts';
import { torqueAtSpeed } from './torque-at-speed.ts';
import { torqueCurve } from './torque-curve.ts';
import { torqueLevel } from './torque-level.ts';
import { unsettledSpeeds } from './unsettled-speeds.ts';
import { volumetricEfficiencyAtSpeed } from './volumetric-efficiency-at-speed.ts';
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
      title: 'At one speed',
      fields: [],
      answers: [
        torqueAtSpeed,
        powerAtSpeed,
        volumetricEfficiencyAtSpeed,
        residualAtSpeed,
        indicatedPressureAtSpeed,
        pumpingPressureAtSpeed,
        frictionPressureAtSpeed,
        brakePressureAtSpeed,
        fuelFlowAtSpeed,
        specificFuelAtSpeed,
        peakCylinderPressure,
      ],
    },
  ],
  figures: [
    figure({
      id: 'figure-output',
      form: 'output',
      caption:
        'Torque and power, each speed held, in a band of 8 % (12 % under 2000 rpm): about two engines in three fall inside. Differences between two builds are surer than levels.',
      from: { torqueCurve, powerCurve, unsettledSpeeds, peakTorque, peakTorqueSpeed, peakPower, peakPowerSpeed },
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
    figure({
      id: 'figure-loop',
      form: 'loop',
      caption:
        'Pressure over volume at the engine speed of chapter 1. The lined loop is what it costs to change the gas.',
      from: { cylinderLoop, engineSpeed },
    }),
  ],
  caution:
    'An estimate: single engines scatter by 8 % and more. Below 1600 rpm it reads high. Start a new engine with less spark than planned, and listen for knock.',
});
