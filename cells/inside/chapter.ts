import { chapter as declare, figure } from '../../src/graph/chapter.ts';
import { engineSpeed } from '../block/inputs.ts';
import { residualCurve } from '../output/residual-curve.ts';
import { backflowCurve } from './backflow-curve.ts';
import { brakePressureAtSpeed } from './brake-pressure-at-speed.ts';
import { burnAngleCurve } from './burn-angle-curve.ts';
import { closingPressure } from './closing-pressure.ts';
import { cycleRecord } from './cycle-record.ts';
import { cylinderLoop } from './cylinder-loop.ts';
import { frictionPressureAtSpeed } from './friction-pressure-at-speed.ts';
import { fuelFlowAtSpeed } from './fuel-flow-at-speed.ts';
import { indicatedPressureAtSpeed } from './indicated-pressure-at-speed.ts';
import { insideSays } from './inside-says.ts';
import { peakCylinderPressure } from './peak-cylinder-pressure.ts';
import { powerAtSpeed } from './power-at-speed.ts';
import { pumpingPressureAtSpeed } from './pumping-pressure-at-speed.ts';
import { residualAtSpeed } from './residual-at-speed.ts';
import { specificFuelAtSpeed } from './specific-fuel-at-speed.ts';
import { torqueAtSpeed } from './torque-at-speed.ts';
import { trappedTemperatureCurve } from './trapped-temperature-curve.ts';
import { volumetricEfficiencyAtSpeed } from './volumetric-efficiency-at-speed.ts';

export const chapter = declare({
  id: 'inside',
  number: 11,
  title: 'Inside one cycle',
  sentence:
    'Where the torque comes from: waves in the pipes, gas through the valves and the work on the piston, through one cycle at the engine speed of chapter 1.',
  says: insideSays,
  fields: [],
  answers: [
    torqueAtSpeed,
    powerAtSpeed,
    volumetricEfficiencyAtSpeed,
    closingPressure,
    residualAtSpeed,
    peakCylinderPressure,
    backflowCurve,
  ],
  groups: [
    {
      title: 'Where the work goes',
      fields: [],
      answers: [
        indicatedPressureAtSpeed,
        pumpingPressureAtSpeed,
        frictionPressureAtSpeed,
        brakePressureAtSpeed,
        fuelFlowAtSpeed,
        specificFuelAtSpeed,
      ],
    },
  ],
  figures: [
    figure({
      id: 'figure-waves',
      form: 'waves',
      caption:
        'Pressure along runner and primary through one cycle. Plain: over the air outside, a push; lined: under it, a pull. A streak is a wave, and it leans by the speed of sound.',
      from: { cycleRecord, engineSpeed },
      crank: 'shows',
    }),
    figure({
      id: 'figure-valve-flow',
      form: 'valveFlow',
      caption:
        'What flows through both valves, and the pressures that drive it. Below the line it goes the wrong way: back into the runner, or out of the exhaust into the cylinder.',
      from: { cycleRecord },
      crank: 'shows',
    }),
    figure({
      id: 'figure-loop',
      form: 'loop',
      caption:
        'Pressure over volume at the engine speed of chapter 1. The lined loop is what it costs to change the gas.',
      from: { cylinderLoop, engineSpeed },
    }),
    figure({
      id: 'figure-residual-work',
      form: 'residualWork',
      caption:
        'Burnt gas left in the charge, how long the flame takes to burn half, and how warm the charge is when the valve shuts, by engine speed.',
      from: { residualCurve, burnAngleCurve, trappedTemperatureCurve },
    }),
  ],
});
