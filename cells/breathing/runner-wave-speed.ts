import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { quarterWaveFrequency, speedOfShutSwings } from '../../src/physics/flow/tuning.ts';
import { soundSpeed } from '../../src/physics/flow/still-air.ts';
import { common } from '../../src/references.ts';
import { rotation } from '../../src/units/quantity.ts';
import { airTemperature } from '../air/inputs.ts';
import { intakeSeatDuration } from '../valves/intake-seat-duration.ts';
import { runnerLength, runnerSwings } from './inputs.ts';

export const runnerWaveSpeed = cell({
  id: 'runnerWaveSpeed',
  label: 'Runner wave home at',
  short: 'Runner wave',
  note: 'With the valve shut the runner rings as a quarter wave; at this speed it has made its whole swings when the valve opens again, and meets it with a crest.',
  kind: scalar(rotation),
  from: { runnerLength, runnerSwings, intakeSeatDuration, airTemperature },
  source: common('a quarter wave in a pipe shut at one end; from memory'),
  formula: 'speed of sound at airTemperature / (4 × runnerLength) × (720° − intakeSeatDuration) / runnerSwings',
  compute: ({ runnerLength, runnerSwings, intakeSeatDuration, airTemperature }) =>
    speedOfShutSwings(quarterWaveFrequency(runnerLength, soundSpeed(airTemperature)), intakeSeatDuration, runnerSwings),
});
