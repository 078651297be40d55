import { cell } from '../../src/graph/cell.ts';
import { remark } from '../../src/graph/kind.ts';
import { standardPressure } from '../../src/physics/air/standard-atmosphere.ts';
import { cite, ussa76 } from '../../src/references.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { airPressure } from '../../src/units/quantity.ts';
import { inchOfMercury, si } from '../../src/units/unit.ts';
import { altitude, barometer, pressureEntry } from './inputs.ts';
import { stationPressure } from './station-pressure.ts';

const weather = si(1.5, inchOfMercury);

export const barometerRemark = cell({
  id: 'barometerRemark',
  label: 'Barometer and altitude',
  note: 'No weather lifts the barometer this far above the standard for the altitude.',
  kind: remark,
  from: { pressureEntry, stationPressure, altitude },
  source: cite(ussa76, 'table I; the 1.5 inHg are common practice'),
  formula: 'stationPressure > standard pressure at altitude + 1.5 inHg',
  about: barometer,
  compute: ({ pressureEntry, stationPressure, altitude }) =>
    pressureEntry !== 'standard' && stationPressure > standardPressure(altitude) + weather
      ? phrase`This looks like a sea-level reading: at this altitude about ${value(standardPressure(altitude), airPressure)} is usual.`
      : null,
});
