import { moistAirDensity } from '../../src/physics/air/density.ts';
import {
  dewPointFromVaporPressure,
  humidityRatio,
  vaporPressureFromRelative,
  vaporPressureFromWetBulb,
  wetBulb,
} from '../../src/physics/air/humidity.ts';
import { saturationPressure } from '../../src/physics/air/saturation.ts';
import { standardPressure, standardTemperature } from '../../src/physics/air/standard-atmosphere.ts';
import { seaLevelFromStation } from '../../src/physics/air/station-pressure.ts';
import { buck1996, buckEnhancement, buckVaporPressure } from '../physics/air/buck.ts';
import { celsius, foot, kelvin, psi } from '../physics/air/units.ts';
import rows from './atmosphere.json';
import { type Given, holdAgainst, numbered } from './printed.ts';

const temperature = (given: Given): number => kelvin(given('T_C'));
const vapor = (given: Given): number => vaporPressureFromRelative(temperature(given), given('RH'));

const saturation = (given: Given): number => saturationPressure(temperature(given));

holdAgainst(rows, numbered('ATM', 1, 44), {
  'saturation vapor pressure over ice': saturation,
  'saturation vapor pressure over water': saturation,
  'saturation vapor pressure, Goff/WMO form': saturation,
  'Buck 1981 eq. 8 (ew4), pure vapor part': (given) => buckVaporPressure(given('T_C')),
  'Buck 1981 with enhancement factor': (given) => buckVaporPressure(given('T_C')) * buckEnhancement(given('P_hPa')),
  'Arden Buck 1996 form': (given) => buck1996(given('T_C')),
  'standard atmosphere pressure': (given) => standardPressure(given('z_m')),
  'ISO 2533 / US 1976 pressure (geopotential)': (given) => standardPressure(given('H_m')),
  'standard pressure, IP table': (given) => standardPressure(given('z_ft') * foot) / psi,
  'standard temperature': (given) => celsius(standardTemperature(given('z_m'))),
  'moist air density': (given) => moistAirDensity(given('P_Pa') - vapor(given), vapor(given), temperature(given)),
  'dry air density ISO sea level': (given) => moistAirDensity(given('P_Pa'), 0, temperature(given)),
  'humidity ratio': (given) => humidityRatio(vapor(given), given('P_Pa')),
  'dew point': (given) => celsius(dewPointFromVaporPressure(vapor(given))),
  'wet bulb': (given) => celsius(wetBulb(temperature(given), vapor(given), given('P_Pa'))),
  'humidity ratio and state from wet bulb (ASHRAE Example 1)': (given) => {
    const pressure = given('P_Pa');
    return humidityRatio(vaporPressureFromWetBulb(temperature(given), kelvin(given('Twb_C')), pressure), pressure);
  },
  'sea-level to station pressure': (given) =>
    seaLevelFromStation(given('p_station_Pa'), given('z_m'), temperature(given)),
});
