import { expect, it } from 'vitest';
import { type Dimension, none, sameDimension, timesPower } from '../../src/units/dimension.ts';
import { degree, footPerMinute, newtonMeter, one, pascal, radian, squareInch } from '../../src/units/unit.ts';

const length: Dimension = [1, 0, 0, 0, 0];
const time: Dimension = [0, 0, 1, 0, 0];

it('dimensions multiply, divide and take powers', () => {
  expect(sameDimension(timesPower(length, time, -1), footPerMinute.dimension)).toBe(true);
  expect(sameDimension(timesPower(none, length, 2), squareInch.dimension)).toBe(true);
  expect(sameDimension(timesPower(pascal.dimension, length, 3), newtonMeter.dimension)).toBe(true);
  expect(timesPower(length, time, 0)).toEqual(length);
});

it('a power that binary fractions round is the same dimension all the same', () => {
  const power = (exponent: number): Dimension => timesPower(none, length, exponent);
  expect(sameDimension(timesPower(none, power(0.1), 3), power(0.3))).toBe(true);
  expect(sameDimension(power(0.3), power(0.301))).toBe(false);
});

it('an angle is no plain figure', () => {
  expect(sameDimension(degree.dimension, radian.dimension)).toBe(true);
  expect(sameDimension(degree.dimension, one.dimension)).toBe(false);
});
