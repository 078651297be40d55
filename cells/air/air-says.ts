import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { common } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import * as q from '../../src/units/quantity.ts';
import { densityAltitude } from './density-altitude.ts';
import { airTemperature, altitude } from './inputs.ts';
import { stationPressure } from './station-pressure.ts';

export const airSays = cell({
  id: 'airSays',
  label: 'Air, in one line',
  note: 'What the chapter comes to, for when it is closed.',
  kind: remark,
  from: { stationPressure, altitude, airTemperature, densityAltitude },
  source: common('a summary'),
  formula: 'stationPressure, altitude, airTemperature, densityAltitude',
  compute: ({ stationPressure, altitude, airTemperature, densityAltitude }) =>
    phrase`${value(stationPressure, q.airPressure)} at ${value(altitude, q.altitude)}, ${value(airTemperature, q.temperature)}: as thin as standard air at ${value(densityAltitude, q.altitude)}.`,
});
