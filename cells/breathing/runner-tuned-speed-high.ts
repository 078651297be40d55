import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { helmholtzFrequency, speedOfSwings, swingsPerTurn, tuningVolume } from '../../src/physics/flow/tuning.ts';
import { soundSpeed } from '../../src/physics/flow/still-air.ts';
import { roundArea } from '../../src/physics/flow/valve-area.ts';
import { cite, engelman } from '../../src/references.ts';
import { rotation } from '../../src/units/quantity.ts';
import { airTemperature } from '../air/inputs.ts';
import { sweptVolume } from '../block/swept-volume.ts';
import { staticRatio } from '../chamber/static-ratio.ts';
import { runnerDiameter, runnerLength } from './inputs.ts';

export const runnerTunedSpeedHigh = cell({
  id: 'runnerTunedSpeedHigh',
  label: 'Runner tuned to, upper end',
  short: 'Runner, upper end',
  note: 'The air in the runner swings against the cylinder as one plug, 2.0 times a turn here: published values run from 2.0 to 2.5. It is where filling is helped, not where power peaks.',
  kind: scalar(rotation),
  from: { runnerLength, runnerDiameter, sweptVolume, staticRatio, airTemperature },
  source: cite(engelman, 'the range of swings from memory'),
  formula:
    'speed of sound at airTemperature × √(π/4 × runnerDiameter² / (runnerLength × sweptVolume/2 × (staticRatio + 1)/(staticRatio − 1))) / 2.0',
  compute: ({ runnerLength, runnerDiameter, sweptVolume, staticRatio, airTemperature }) =>
    speedOfSwings(
      helmholtzFrequency(
        { length: runnerLength, area: roundArea(runnerDiameter) },
        tuningVolume(sweptVolume, staticRatio),
        soundSpeed(airTemperature),
      ),
      swingsPerTurn.least,
    ),
});
