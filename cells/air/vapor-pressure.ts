import { cell } from '../../src/graph/cell.ts';
import { scalar } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import {
  vaporPressureFromDewPoint,
  vaporPressureFromRelative,
  vaporPressureFromWetBulb,
} from '../../src/physics/air/humidity.ts';
import { ashrae, cite } from '../../src/references.ts';
import { vaporPressure as quantity } from '../../src/units/quantity.ts';
import { airTemperature, dewPoint, humidityEntry, relativeHumidity, wetBulb } from './inputs.ts';
import { stationPressure } from './station-pressure.ts';

export const vaporPressure = cell({
  id: 'vaporPressure',
  label: 'Vapor pressure',
  short: 'Vapor',
  note: 'The share of the pressure that is water: it fills the cylinder and burns nothing.',
  kind: scalar(quantity),
  from: { humidityEntry, airTemperature, relativeHumidity, dewPoint, wetBulb, stationPressure },
  source: cite(ashrae, 'eqs. 5 and 6; wet bulb by eqs. 33 to 35'),
  formula: 'relativeHumidity × saturation pressure at airTemperature, or from dewPoint or wetBulb',
  compute: ({ humidityEntry, airTemperature, relativeHumidity, dewPoint, wetBulb, stationPressure }) => {
    switch (humidityEntry) {
      case 'relative':
        return vaporPressureFromRelative(airTemperature, relativeHumidity);
      case 'dewPoint':
        if (dewPoint > airTemperature)
          throw new Impossible(['The dew point cannot be above the air temperature.'], 'dewPoint');
        return vaporPressureFromDewPoint(dewPoint, airTemperature);
      case 'wetBulb': {
        if (wetBulb > airTemperature)
          throw new Impossible(['The wet bulb cannot be above the air temperature.'], 'wetBulb');
        try {
          return vaporPressureFromWetBulb(airTemperature, wetBulb, stationPressure);
        } catch {
          throw new Impossible(
            ['So cold a wet bulb does not go with this air: it would be drier than dry.'],
            'wetBulb',
          );
        }
      }
    }
  },
});
