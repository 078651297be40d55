import { factorDin70020, factorIso1585, factorJ1349, factorJ607 } from '../../src/physics/air/correction-factors.ts';
import { vaporPressureFromRelative } from '../../src/physics/air/humidity.ts';
import { kelvin } from '../physics/air/units.ts';
import rows from './correction-chains.json';
import { type Given, holdAgainst } from './printed.ts';

/** From thermometer, hygrometer and barometer to what the factors are fed with. */
const air = (given: Given) => {
  const temperature = kelvin(given('T_C'));
  const station = given('P_station_mbar') * 100;
  return {
    temperature,
    station,
    dry: station - vaporPressureFromRelative(temperature, given('RH_percent') / 100),
  };
};

const days = [1, 2, 3, 4, 5].flatMap((day) =>
  ['DRY', 'J1349', 'DIN', 'ISO', 'J607'].map((what) => `CHN-${day}-${what}`),
);

// from a weather reading to a factor; two of the days also carry a figure someone else printed
holdAgainst(rows, [...days, 'CHN-3-PUBLISHED', 'CHN-4-PUBLISHED'], {
  'dry pressure': (given) => air(given).dry / 100,
  'J1349 factor': (given) => factorJ1349(air(given).dry, air(given).temperature),
  'DIN 70020 factor': (given) => factorDin70020(air(given).station, air(given).temperature),
  'ISO 1585 factor': (given) => factorIso1585(air(given).dry, air(given).temperature),
  'J607 factor': (given) => factorJ607(air(given).dry, air(given).temperature),
});
