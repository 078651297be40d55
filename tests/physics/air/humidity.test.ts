import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dewPointFromVaporPressure,
  humidityRatio,
  vaporPressureFromDewPoint,
  vaporPressureFromRelative,
  vaporPressureFromWetBulb,
  wetBulb,
} from '../../../src/physics/air/humidity.ts';
import { saturationPressure } from '../../../src/physics/air/saturation.ts';
import { kelvin } from './units.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('humidity, whichever way it is given', () => {
  it('comes back from the vapor pressure as the dew point it was made from', () => {
    fc.assert(
      fc.property(between(-80, 90), (t) => {
        expect(dewPointFromVaporPressure(vaporPressureFromDewPoint(kelvin(t)))).toBeCloseTo(kelvin(t), 6);
      }),
    );
  });

  it('comes back from the wet bulb as the vapor pressure it was made from, from bone-dry air to fog', () => {
    fc.assert(
      fc.property(between(-40, 55), between(0, 1), between(60000, 105000), (t, rh, pressure) => {
        const vapor = vaporPressureFromRelative(kelvin(t), rh);
        const bulb = wetBulb(kelvin(t), vapor, pressure);
        expect(bulb).toBeLessThanOrEqual(kelvin(t));
        const back = vaporPressureFromWetBulb(kelvin(t), bulb, pressure);
        expect(Math.abs(back - vapor)).toBeLessThan(1e-4); // Pa
      }),
    );
  });

  it('lies between dew point and air temperature as a wet bulb', () => {
    fc.assert(
      fc.property(between(5, 50), between(0.1, 0.99), (t, rh) => {
        const vapor = vaporPressureFromRelative(kelvin(t), rh);
        const bulb = wetBulb(kelvin(t), vapor, 98000);
        expect(bulb).toBeLessThan(kelvin(t));
        expect(bulb).toBeGreaterThan(dewPointFromVaporPressure(vapor));
      }),
    );
  });

  it('has one temperature for air, wet bulb and dew point at saturation', () => {
    const saturated = saturationPressure(kelvin(22));
    expect(wetBulb(kelvin(22), saturated, 101325)).toBe(kelvin(22));
    expect(dewPointFromVaporPressure(saturated)).toBeCloseTo(kelvin(22), 9);
    expect(vaporPressureFromRelative(kelvin(22), 1)).toBe(saturated);
  });

  it('has a wet bulb a little below the air as soon as saturation is missed a little', () => {
    const vapor = vaporPressureFromRelative(kelvin(22), 0.9995);
    const gap = kelvin(22) - wetBulb(kelvin(22), vapor, 101325);
    expect(gap).toBeGreaterThan(0.001);
    expect(gap).toBeLessThan(kelvin(22) - dewPointFromVaporPressure(vapor));
  });

  it('reads a wet wick rather than a frozen one where both would fit', () => {
    const vapor = vaporPressureFromWetBulb(kelvin(3), kelvin(0.05), 95000);
    expect(wetBulb(kelvin(3), vapor, 95000)).toBeCloseTo(kelvin(0.05), 6);
  });

  it('crosses freezing without losing its answer', () => {
    for (let rh = 0; rh <= 1; rh += 0.01) {
      const vapor = vaporPressureFromRelative(kelvin(4), rh);
      expect(vaporPressureFromWetBulb(kelvin(4), wetBulb(kelvin(4), vapor, 95000), 95000)).toBeCloseTo(vapor, 5);
    }
  });
});

describe('humidity that cannot be', () => {
  it.each([
    ['relative humidity over 100 %', () => vaporPressureFromRelative(kelvin(20), 1.01), /over 100 %/],
    ['relative humidity below zero', () => vaporPressureFromRelative(kelvin(20), -0.01), /cannot be negative/],
    ['relative humidity that is no number', () => vaporPressureFromRelative(kelvin(20), Number.NaN), /negative/],
    ['a dew point warmer than the air', () => vaporPressureFromDewPoint(kelvin(21), kelvin(20)), /warmer than the air/],
    [
      'a wet bulb warmer than the air',
      () => vaporPressureFromWetBulb(kelvin(20), kelvin(21), 1e5),
      /warmer than the air/,
    ],
    [
      'a wet bulb colder than dry air gives',
      () => vaporPressureFromWetBulb(kelvin(40), kelvin(5), 1e5),
      /perfectly dry/,
    ],
    ['a vapor pressure above the total', () => humidityRatio(101, 100), /not below the total/],
    ['a negative vapor pressure', () => humidityRatio(-1, 100), /cannot be negative/],
    ['a wet bulb of air with more vapor than it holds', () => wetBulb(kelvin(20), 2400, 101325), /over 100 %/],
    ['a wet bulb of air hotter than boiling water', () => wetBulb(kelvin(120), 1000, 101325), /not below the total/],
    ['a wet bulb of dry air at the cold end', () => wetBulb(kelvin(-100), 0, 101325), /No wet bulb/],
    ['a dew point of dry air', () => dewPointFromVaporPressure(0), /no dew point/],
    ['a dew point beyond the formula', () => dewPointFromVaporPressure(1e-6), /no dew point from/],
  ])('is refused: %s', (_, ask, words) => {
    expect(ask).toThrow(RangeError);
    expect(ask).toThrow(words);
  });

  it('gives dry air a wet bulb, well below the air, though it has no dew point', () => {
    const bulb = wetBulb(kelvin(30), 0, 101325);
    expect(vaporPressureFromWetBulb(kelvin(30), bulb + 1e-9, 101325)).toBeLessThan(0.001);
    expect(bulb).toBeLessThan(kelvin(15));
  });
});
