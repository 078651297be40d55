import { describe, expect, it } from 'vitest';
import { moistAirDensity } from '../../../src/physics/air/density.ts';
import {
  dewPointFromVaporPressure,
  humidityRatio,
  vaporPressureFromWetBulb,
} from '../../../src/physics/air/humidity.ts';
import { saturationPressure } from '../../../src/physics/air/saturation.ts';
import {
  densityAltitude,
  pressureAltitude,
  standardDensity,
  standardPressure,
  standardTemperature,
} from '../../../src/physics/air/standard-atmosphere.ts';
import { buck1996, buckVaporPressure } from './buck.ts';
import { celsius, kelvin } from './units.ts';

describe('vapor pressure', () => {
  it("agrees with Buck's independent formulas within 0.2 % from 0 to 50 C", () => {
    for (let t = 0; t <= 50; t += 2.5) {
      const ours = saturationPressure(kelvin(t));
      expect(Math.abs(ours / buckVaporPressure(t) - 1)).toBeLessThan(0.002);
      expect(Math.abs(ours / buck1996(t) - 1)).toBeLessThan(0.002);
    }
  });

  it('passes from ice to water without a step a reader could see', () => {
    const step = saturationPressure(273.1600001) / saturationPressure(273.1599999) - 1;
    expect(Math.abs(step)).toBeLessThan(1e-7);
  });

  it('is refused outside -100 to 200 C', () => {
    expect(() => saturationPressure(kelvin(-101))).toThrow(RangeError);
    expect(() => saturationPressure(kelvin(201))).toThrow(RangeError);
    expect(() => saturationPressure(Number.NaN)).toThrow(RangeError);
  });
});

describe('the worked example of ASHRAE Fundamentals 2017, ch. 1 (Example 1: 40 C, wet bulb 20 C, 101.325 kPa)', () => {
  const air = kelvin(40);
  const pressure = vaporPressureFromWetBulb(air, kelvin(20), 101325);

  it('has 14 % relative humidity', () => {
    expect(Math.abs(pressure / saturationPressure(air) - 0.14)).toBeLessThan(0.005);
  });

  it('has a dew point of 7 C', () => {
    expect(Math.abs(celsius(dewPointFromVaporPressure(pressure)) - 7)).toBeLessThan(0.5);
  });

  it('takes 0.896 m3 for each kg of dry air', () => {
    const each = (1 + humidityRatio(pressure, 101325)) / moistAirDensity(101325 - pressure, pressure, air);
    expect(Math.abs(each - 0.896)).toBeLessThan(0.0006);
  });
});

describe('standard atmosphere', () => {
  // U.S. Standard Atmosphere 1976, density table (from memory; its steps are geometric, 0.03 % off at 3 km)
  it.each([
    [0, 1.225],
    [1000, 1.1117],
    [2000, 1.0066],
    [3000, 0.9093],
  ])('has at %i m a density of %f kg/m3', (altitude, density) => {
    expect(Math.abs(standardDensity(altitude) / density - 1)).toBeLessThan(5e-4);
  });

  it('gives back the altitude from its own pressure and density', () => {
    for (let altitude = -2000; altitude <= 11000; altitude += 500) {
      expect(pressureAltitude(standardPressure(altitude))).toBeCloseTo(altitude, 6);
      expect(densityAltitude(standardDensity(altitude))).toBeCloseTo(altitude, 6);
    }
  });

  it('puts dry air of 101.325 kPa and 15 C at a density altitude of zero', () => {
    expect(densityAltitude(moistAirDensity(101325, 0, kelvin(15)))).toBeCloseTo(0, 6);
  });

  it('puts humid air higher than dry air of the same pressure and temperature', () => {
    const dry = densityAltitude(moistAirDensity(98000, 0, kelvin(30)));
    expect(densityAltitude(moistAirDensity(95500, 2500, kelvin(30)))).toBeGreaterThan(dry);
  });

  it('still has a density altitude on a day of -40 C at sea level, though below the layer', () => {
    expect(densityAltitude(moistAirDensity(103000, 0, kelvin(-40)))).toBeLessThan(-2000);
  });

  it('is refused below -2 km and above 11 km', () => {
    for (const altitude of [-2001, 11001, Number.NaN]) {
      expect(() => standardTemperature(altitude)).toThrow(RangeError);
      expect(() => standardPressure(altitude)).toThrow(RangeError);
      expect(() => standardDensity(altitude)).toThrow(RangeError);
    }
    for (const pressure of [130000, 22000, 0, -1, Number.NaN]) {
      expect(() => pressureAltitude(pressure)).toThrow(RangeError);
    }
    for (const density of [2, 0.3, 0, -1, Number.NaN]) expect(() => densityAltitude(density)).toThrow(RangeError);
  });

  it('leaves no room for a partial pressure below zero or a temperature at absolute zero', () => {
    expect(() => moistAirDensity(-1, 0, 300)).toThrow(RangeError);
    expect(() => moistAirDensity(1e5, -1, 300)).toThrow(RangeError);
    expect(() => moistAirDensity(1e5, 0, 0)).toThrow(RangeError);
  });
});
