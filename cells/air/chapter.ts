import { chapter as declare, when } from '../../src/graph/chapter.ts';
import { airSays } from './air-says.ts';
import { airDensity } from './air-density.ts';
import { densityAltitude } from './density-altitude.ts';
import { dryPressure } from './dry-pressure.ts';
import { factorDin70020 } from './factor-din70020.ts';
import { factorIso1585 } from './factor-iso1585.ts';
import { factorJ1349Friction } from './factor-j1349-friction.ts';
import { factorJ1349 } from './factor-j1349.ts';
import { factorJ607 } from './factor-j607.ts';
import {
  airTemperature,
  altitude,
  barometer,
  brakeTorque,
  dewPoint,
  frictionTorque,
  humidityEntry,
  pressureEntry,
  relativeHumidity,
  wetBulb,
} from './inputs.ts';
import { stationPressure } from './station-pressure.ts';
import { typicalFriction } from './typical-friction.ts';
import { vaporPressure } from './vapor-pressure.ts';

export const chapter = declare({
  id: 'air',
  number: 5,
  title: 'Air',
  sentence: 'What the engine breathes here, and what its figures would be in agreed air.',
  fields: [
    pressureEntry,
    ...when(pressureEntry, ['station', 'altimeter', 'seaLevel'], barometer),
    altitude,
    airTemperature,
    humidityEntry,
    ...when(humidityEntry, ['relative'], relativeHumidity),
    ...when(humidityEntry, ['dewPoint'], dewPoint),
    ...when(humidityEntry, ['wetBulb'], wetBulb),
    brakeTorque,
    frictionTorque,
  ],
  answers: [
    stationPressure,
    vaporPressure,
    dryPressure,
    airDensity,
    densityAltitude,
    factorJ1349,
    factorJ1349Friction,
    factorJ607,
    factorDin70020,
    factorIso1585,
    typicalFriction,
  ],
  caution: 'Never compare pulls corrected by different standards: the same run reads 4 % apart.',
  says: airSays,
});
