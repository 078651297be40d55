import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { ashrae, cite } from '../../src/references.ts';
import { airPressure } from '../../src/units/quantity.ts';
import { stationPressure } from './station-pressure.ts';
import { vaporPressure } from './vapor-pressure.ts';

export const dryPressure = cell({
  id: 'dryPressure',
  label: 'Dry pressure',
  note: 'Station pressure less the water’s share: what brings oxygen.',
  kind: scalar(airPressure),
  from: { stationPressure, vaporPressure },
  source: cite(ashrae, 'Dalton’s law, p. 1.2'),
  formula: 'stationPressure − vaporPressure',
  compute: ({ stationPressure, vaporPressure }) => {
    if (vaporPressure >= stationPressure)
      throw new Impossible(['The vapor alone would weigh more than this air.'], 'barometer');
    return stationPressure - vaporPressure;
  },
  examples: [{ given: { stationPressure: 101_325, vaporPressure: 1325 }, gives: 100_000, within: 1e-9 }],
});
