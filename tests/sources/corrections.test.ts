import { describe, expect, it } from 'vitest';
import {
  factorDin70020,
  factorIso1585,
  factorJ1349,
  factorJ1349Friction,
  factorJ607,
} from '../../src/physics/air/correction-factors.ts';
import { frictionTorque } from '../../src/physics/air/friction-torque.ts';
import { vaporPressureFromRelative } from '../../src/physics/air/humidity.ts';
import { cubicInch, foot, inHg, kelvin, kelvinFromFahrenheit, mmHg, poundFoot } from '../physics/air/units.ts';
import rows from './corrections.json';
import { type Calls, type Given, holdAgainst, numbered } from './printed.ts';

const dry = (given: Given): number => given('p_dry_kPa') * 1000;
const warmth = (given: Given): number => kelvin(given('T_C'));

/** A whole chain: station pressure and relative humidity to what a factor is fed with. */
const chain = (given: Given) => {
  const temperature = kelvinFromFahrenheit(given('T_F'));
  const station = given('P_station_inHg') * inHg;
  const vapor = vaporPressureFromRelative(temperature, given('RH'));
  return { temperature, station, vapor, dry: station - vapor };
};

const pistonSpeed = (given: Given): number => (given('piston_speed_ft_min') * foot) / 60;

const calls: Calls = {
  'SAE J1349 (1990) factor': (given) => factorJ1349(dry(given), warmth(given)),
  'J1349 factor with friction measured': (given) => {
    const efficiency = given('eta_m'); // brake over indicated torque
    return factorJ1349Friction(dry(given), warmth(given), efficiency, 1 - efficiency);
  },
  'J1349 (2004, 2011) SI reference state': () => {
    // the state where the factor is 1, drawn out of the factor itself by undoing its 1.18, 0.18 and root
    const airTerm = (pressure: number, t: number): number => (factorJ1349(pressure, kelvin(t)) + 0.18) / 1.18;
    const t = (30 + 273) / airTerm(99000, 30) ** 2 - 273;
    const dryPressure = 100 * airTerm(100000, 25);
    return [t, dryPressure, 100 - dryPressure, dryPressure + 1]; // with 1 kPa of vapor the total is 100
  },
  'J607 factor': (given) =>
    factorJ607((given('P_baro_inHg') - given('pv_inHg')) * inHg, kelvinFromFahrenheit(given('T_F'))),
  'DIN 70020 factor': (given) => factorDin70020(given('p_total_mbar') * 100, warmth(given)),
  'ISO 1585 / ECE R85 / 80/1269/EEC SI factor': (given) => factorIso1585(dry(given), warmth(given)),
  'JIS D 1001-1993 SI factor': (given) => factorIso1585(dry(given), warmth(given)), // said to be the same formula
  // The product has no such standard, but the formula has the shape of J607's with another reference state, and a ratio
  // of two J607 factors moves the reference.
  'Heywood sec. 2.12 factor (older SAE reference)': (given) =>
    factorJ607((given('pm_mmHg') - given('pv_mmHg')) * mmHg, kelvin(given('Tm_C'))) /
    factorJ607(given('ps_d_mmHg') * mmHg, kelvin(given('Ts_C'))),
  'full chain, hot humid day: vapor pressure': (given) => chain(given).vapor,
  'full chain, hot humid day: dry pressure, kPa': (given) => chain(given).dry / 1000,
  'full chain, hot humid day: dry pressure, inHg': (given) => chain(given).dry / inHg,
  'full chain, hot humid day: J607 factor': (given) => factorJ607(chain(given).dry, chain(given).temperature),
  'full chain, hot humid day: J1349 factor': (given) => factorJ1349(chain(given).dry, chain(given).temperature),
  'full chain, hot humid day: ISO 1585 factor': (given) => factorIso1585(chain(given).dry, chain(given).temperature),
  'full chain, hot humid day: DIN 70020 factor': (given) =>
    factorDin70020(chain(given).station, chain(given).temperature),
  'friction torque for each cubic inch': (given) => frictionTorque(pistonSpeed(given), cubicInch) / poundFoot,
  // mean effective pressure of a four-stroke engine: 4 pi torque over displacement, here in bar
  'fmep implied by that table': (given) => (4 * Math.PI * frictionTorque(pistonSpeed(given), 0.005)) / 0.005 / 1e5,
};

const reasons: Readonly<Record<string, string>> = {
  'COR-15':
    'the row mixes the offsets of two texts (298 K over 60 F as 288.706 K) and lands 0.00026 low, outside its own ' +
    'tolerance of 0.0002; judged below by the arithmetic of the printed constants',
};

describe('correction factors in print', () => {
  const judged = (id: string): boolean => !(id in reasons);
  holdAgainst(
    rows.filter((row) => judged(row.id)),
    numbered('COR', 1, 42).filter(judged),
    calls,
  );

  it('are all judged but for the rows given a reason', () => {
    expect(rows.filter((row) => !judged(row.id)).map((row) => row.id)).toEqual(Object.keys(reasons));
  });

  it('read 4.0 % higher by J607 than by J1349 at the reference state of J1349, by the printed constants', () => {
    const apart = factorJ607(99000, kelvin(25)) / factorJ1349(99000, kelvin(25));
    // 99 kPa is 29.23468 inHg (NIST SP 811), 25 C is 77 F; J1349 is 1 there
    expect(apart).toBeCloseTo((29.92 / 29.23468) * Math.sqrt((77 + 459.7) / 519.7), 6);
    // the published 1.03979 comes back from the mixed offsets, which shows where it went astray
    expect((29.92 / 29.23468) * Math.sqrt(298 / 288.7056)).toBeCloseTo(1.039785605, 5);
    expect(Math.abs(apart - 1.039785605)).toBeLessThan(3e-4);
  });
});
