import { describe, expect, it } from 'vitest';
import { sparkAt, sparkCurveOf } from '../../../src/physics/cycle/spark.ts';

const rpm = Math.PI / 30;
const degree = Math.PI / 180;

describe('a total advance', () => {
  const at = (speed: number): number => sparkAt(sparkCurveOf(34 * degree), speed * rpm) / degree;

  it('is all in from 2800 rpm', () => {
    expect(at(2800)).toBeCloseTo(34, 12);
    expect(at(6500)).toBeCloseTo(34, 12);
  });

  it('is 20 degrees less at 800 rpm and below, and comes in along a straight line', () => {
    expect(at(800)).toBeCloseTo(14, 12);
    expect(at(400)).toBeCloseTo(14, 12);
    expect(at(1800)).toBeCloseTo(24, 12);
  });

  it('may be so small that the spark comes after the top at idle', () =>
    expect(sparkAt(sparkCurveOf(15 * degree), 800 * rpm) / degree).toBeCloseTo(-5, 12));
});

describe('a spark table', () => {
  const table = [
    { speed: 1000 * rpm, advance: 12 * degree },
    { speed: 2000 * rpm, advance: 28 * degree },
    { speed: 4000 * rpm, advance: 32 * degree },
  ];

  it('is read along straight lines and held at its ends', () => {
    const read = [500, 1000, 1500, 3000, 4000, 7000].map((speed) => sparkAt(table, speed * rpm) / degree);
    [12, 12, 20, 30, 32, 32].forEach((advance, i) => expect(read[i]).toBeCloseTo(advance, 12));
  });

  it('with one row is that row', () => expect(sparkAt([table[1]!], 9000 * rpm)).toBe(28 * degree));

  it('without rows is refused', () => expect(() => sparkAt([], 100)).toThrow('no rows'));
});
