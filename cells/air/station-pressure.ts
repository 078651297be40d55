import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { standardPressure } from '../../src/physics/air/standard-atmosphere.ts';
import { stationFromAltimeter, stationFromSeaLevel } from '../../src/physics/air/station-pressure.ts';
import { cite, ussa76 } from '../../src/references.ts';
import { airPressure } from '../../src/units/quantity.ts';
import { inchOfMercury, si } from '../../src/units/unit.ts';
import { airTemperature, altitude, barometer, pressureEntry } from './inputs.ts';

export const stationPressure = cell({
  id: 'stationPressure',
  label: 'Station pressure',
  note: 'What the air weighs here: the only pressure an engine knows.',
  kind: scalar(airPressure),
  from: { pressureEntry, barometer, altitude, airTemperature },
  source: cite(ussa76, 'eq. 33a; sea-level reports as in the ASHRAE Handbook 2017, ch. 1'),
  formula: 'barometer, brought here from where it was reported',
  slider: [si(22, inchOfMercury), si(31, inchOfMercury)],
  compute: ({ pressureEntry, barometer, altitude, airTemperature }) => {
    switch (pressureEntry) {
      case 'station':
        return barometer;
      case 'altimeter':
        return stationFromAltimeter(barometer, altitude);
      case 'seaLevel':
        return stationFromSeaLevel(barometer, altitude, airTemperature);
      case 'standard':
        return standardPressure(altitude);
    }
  },
});
