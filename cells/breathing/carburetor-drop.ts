import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import * as physics from '../../src/physics/flow/carburetor.ts';
import { cite, heywood } from '../../src/references.ts';
import { pressureDrop } from '../../src/units/quantity.ts';
import { airDensity } from '../air/air-density.ts';
import { stationPressure } from '../air/station-pressure.ts';
import { carburetorDemand } from './carburetor-demand.ts';
import { carburetorFlow, carburetorRating } from './inputs.ts';

export const carburetorDrop = cell({
  id: 'carburetorDrop',
  label: 'Drop across the carburetor at the demand',
  short: 'Carburetor drop',
  note: 'Wide open, in the air here, at a steady flow: the pulses of few cylinders make it larger.',
  kind: scalar(pressureDrop),
  from: { carburetorFlow, carburetorRating, carburetorDemand, stationPressure, airDensity },
  source: cite(heywood, 'eq. C.8; ratings in standard air'),
  formula: 'the drop at which an opening that passes carburetorFlow at carburetorRating passes carburetorDemand',
  compute: ({ carburetorFlow, carburetorRating, carburetorDemand, stationPressure, airDensity }) => {
    const drop = physics.carburetorDrop(physics.carburetorArea(carburetorFlow, carburetorRating), carburetorDemand, {
      pressure: stationPressure,
      density: airDensity,
    });
    if (drop === null)
      throw new Impossible(
        ['This carburetor chokes before it passes what the engine asks for: take a larger one.'],
        'carburetorFlow',
      );
    return drop;
  },
});
