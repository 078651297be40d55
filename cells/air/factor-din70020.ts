import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import * as physics from '../../src/physics/air/correction-factors.ts';
import { cite, din70020 } from '../../src/references.ts';
import { factor } from '../../src/units/quantity.ts';
import { stationPressure } from './station-pressure.ts';
import { airTemperature } from './inputs.ts';

export const factorDin70020 = cell({
  id: 'factorDin70020',
  label: 'DIN 70020',
  note: 'To 20 °C and 1013 mbar, from the pressure as measured, moisture and all.',
  kind: scalar(factor),
  from: { stationPressure, airTemperature },
  source: cite(din70020, 'the window is common practice'),
  formula: '1013 mbar / stationPressure × √((t + 273) / 293)',
  validValue: [0.93, 1.07],
  compute: ({ stationPressure, airTemperature }) => physics.factorDin70020(stationPressure, airTemperature),
});
