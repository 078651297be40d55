import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { moistAirDensity } from '../../../src/physics/air/density.ts';
import {
  dewPointFromVaporPressure,
  humidityRatio,
  vaporPressureFromRelative,
  vaporPressureFromWetBulb,
  wetBulb,
} from '../../../src/physics/air/humidity.ts';
import { saturationPressure } from '../../../src/physics/air/saturation.ts';
import { standardPressure, standardTemperature } from '../../../src/physics/air/standard-atmosphere.ts';
import { seaLevelFromStation, stationFromSeaLevel } from '../../../src/physics/air/station-pressure.ts';
import { celsius, kelvin } from './units.ts';

// psychrolib (ASHRAE Fundamentals 2017 in the hands of its own authors) judges the same relations over a grid.
psychrolib.SetUnitSystem(psychrolib.SI);

const grid = [-25, -10, -2, 4, 12, 25, 38, 50].flatMap((temperature) =>
  [0.05, 0.3, 0.6, 0.95].flatMap((relative) =>
    [70000, 90000, 101325].map((pressure) => [temperature, relative, pressure]),
  ),
) as unknown as readonly (readonly [number, number, number])[];

const off = (ours: number, theirs: number): number => Math.abs(ours / theirs - 1);

describe('against psychrolib', () => {
  it('has the same saturation pressure from -100 to 200 C', () => {
    for (let t = -100; t <= 200; t += 3.7) {
      expect(off(saturationPressure(kelvin(t)), psychrolib.GetSatVapPres(t))).toBeLessThan(1e-9);
    }
  });

  it.each(grid)(
    'has the same humidity ratio, dew point and density at %f C, %f of saturation and %i Pa',
    (t, rh, p) => {
      const vapor = vaporPressureFromRelative(kelvin(t), rh);
      const ratio = psychrolib.GetHumRatioFromVapPres(vapor, p);
      expect(off(humidityRatio(vapor, p), ratio)).toBeLessThan(1e-9);
      // its dew points are solved to 0.001 K
      expect(
        Math.abs(celsius(dewPointFromVaporPressure(vapor)) - psychrolib.GetTDewPointFromVapPres(t, vapor)),
      ).toBeLessThan(0.002);
      // its gas constant is 287.042, ours that of ISO 2533
      expect(
        off(moistAirDensity(p - vapor, vapor, kelvin(t)), psychrolib.GetMoistAirDensity(t, ratio, p)),
      ).toBeLessThan(1e-4);
    },
  );

  it.each(grid)(
    'finds a wet bulb that psychrolib takes back to the same air at %f C, %f of saturation and %i Pa',
    (t, rh, p) => {
      const vapor = vaporPressureFromRelative(kelvin(t), rh);
      const bulb = wetBulb(kelvin(t), vapor, p);
      expect(off(psychrolib.GetHumRatioFromTWetBulb(t, celsius(bulb), p), humidityRatio(vapor, p))).toBeLessThan(1e-7);
    },
  );

  it.each(grid.filter(([t]) => t < -5 || t > 20))(
    'finds the same wet bulb at %f C, %f of saturation and %i Pa',
    (t, rh, p) => {
      const vapor = vaporPressureFromRelative(kelvin(t), rh);
      const theirs = psychrolib.GetTWetBulbFromHumRatio(t, humidityRatio(vapor, p), p);
      expect(Math.abs(celsius(wetBulb(kelvin(t), vapor, p)) - theirs)).toBeLessThan(0.002);
    },
  );

  it('reads a wet bulb the same way, wet and frozen', () => {
    for (const [t, bulb] of [
      [40, 20],
      [25, 18],
      [10, 4],
      [3, 0],
      [2, -1],
      [-5, -6],
      [-20, -20.2],
    ] as const) {
      const theirs = psychrolib.GetVapPresFromHumRatio(psychrolib.GetHumRatioFromTWetBulb(t, bulb, 95000), 95000);
      expect(off(vaporPressureFromWetBulb(kelvin(t), kelvin(bulb), 95000), theirs)).toBeLessThan(1e-9);
    }
  });

  it('has the same standard atmosphere, within the rounding of its constants', () => {
    for (let z = -500; z <= 10000; z += 250) {
      expect(off(standardPressure(z), psychrolib.GetStandardAtmPressure(z))).toBeLessThan(2e-5);
      expect(celsius(standardTemperature(z))).toBeCloseTo(psychrolib.GetStandardAtmTemperature(z), 9);
    }
  });

  it('reduces a pressure to sea level and back in the same way', () => {
    for (const [z, t] of [
      [0, 15],
      [105, 17.19],
      [1600, -10],
      [2200, 32],
    ] as const) {
      expect(off(seaLevelFromStation(80000, z, kelvin(t)), psychrolib.GetSeaLevelPressure(80000, z, t))).toBeLessThan(
        1e-9,
      );
      expect(off(stationFromSeaLevel(101900, z, kelvin(t)), psychrolib.GetStationPressure(101900, z, t))).toBeLessThan(
        1e-9,
      );
    }
  });
});
