import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standardPressure } from '../../../src/physics/air/standard-atmosphere.ts';
import {
  seaLevelFromStation,
  stationFromAltimeter,
  stationFromSeaLevel,
} from '../../../src/physics/air/station-pressure.ts';
import { kelvin } from './units.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/**
 * The altimeter setting of the U.S. weather services from a station pressure in mbar (Smithsonian Meteorological Tables,
 * from memory): the independent way round, without the 0.3 mbar for the height of the instrument above the field.
 */
const settingOfWeatherService = (station: number, altitude: number): number => {
  const n = 0.190284;
  return station * (1 + ((1013.25 ** n * 0.0065) / 288) * (altitude / station ** n)) ** (1 / n);
};

describe('station pressure behind an altimeter setting', () => {
  it('is the standard pressure of the place when the setting is standard', () => {
    fc.assert(
      fc.property(between(-400, 5000), (altitude) => {
        expect(stationFromAltimeter(101325, altitude)).toBeCloseTo(standardPressure(altitude), 6);
      }),
    );
  });

  it('is the setting itself at sea level', () => {
    fc.assert(
      fc.property(between(95000, 106000), (setting) => {
        expect(stationFromAltimeter(setting, 0)).toBeCloseTo(setting, 6);
      }),
    );
  });

  it("agrees within 0.2 mbar with the weather services' own formula (from memory)", () => {
    for (const [setting, altitude] of [
      [1002, 90],
      [1013.25, 1600],
      [1030, 300],
      [1020, 2200],
    ] as const) {
      const station = stationFromAltimeter(setting * 100, altitude) / 100;
      expect(Math.abs(settingOfWeatherService(station, altitude) - setting)).toBeLessThan(0.2);
    }
  });
});

describe('station pressure behind a sea-level reading', () => {
  it('undoes the reduction to sea level', () => {
    fc.assert(
      fc.property(between(60000, 105000), between(-400, 4000), between(-30, 45), (station, altitude, t) => {
        const reading = seaLevelFromStation(station, altitude, kelvin(t));
        expect(stationFromSeaLevel(reading, altitude, kelvin(t))).toBeCloseTo(station, 6);
      }),
    );
  });

  it('agrees with the altimeter setting when the day is a standard one', () => {
    // at the standard temperature of the place both reductions describe the same column
    const station = standardPressure(1500);
    expect(Math.abs(seaLevelFromStation(station, 1500, kelvin(15 - 9.75)) - 101325)).toBeLessThan(60);
  });

  it('is higher on a warm day, when the column below the place would be lighter', () => {
    expect(stationFromSeaLevel(101500, 1800, kelvin(35))).toBeGreaterThan(stationFromSeaLevel(101500, 1800, kelvin(0)));
  });

  it('is refused for a pressure or temperature that is not above zero', () => {
    expect(() => stationFromSeaLevel(0, 100, 290)).toThrow(RangeError);
    expect(() => seaLevelFromStation(-1, 100, 290)).toThrow(RangeError);
    expect(() => seaLevelFromStation(1e5, 100, 0)).toThrow(RangeError);
    expect(() => stationFromSeaLevel(1e5, -1e6, 290)).toThrow(RangeError);
    expect(() => stationFromAltimeter(0, 100)).toThrow(RangeError);
  });
});
