import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  factorDin70020,
  factorIso1585,
  factorJ1349,
  factorJ1349Friction,
  factorJ607,
} from '../../../src/physics/air/correction-factors.ts';
import { frictionTorque } from '../../../src/physics/air/friction-torque.ts';
import { cubicInch, foot, kelvin, poundFoot } from './units.ts';

describe('correction factors', () => {
  const factors = [
    ['J1349', factorJ1349],
    ['J607', factorJ607],
    ['DIN 70020', factorDin70020],
    ['ISO 1585', factorIso1585],
    ['J1349 with friction', (p: number, t: number) => factorJ1349Friction(p, t, 400, 60)],
  ] as const;
  const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

  it.each(factors)('fall as pressure rises and grow as the air warms: %s', (_, factor) => {
    fc.assert(
      fc.property(between(70000, 105000), between(-20, 50), between(1, 5000), (pressure, t, more) => {
        const here = factor(pressure, kelvin(t));
        expect(factor(pressure + more, kelvin(t))).toBeLessThan(here);
        expect(factor(pressure, kelvin(t) + more / 1000)).toBeGreaterThan(here);
      }),
    );
  });

  it.each(factors)('are refused for a pressure or temperature that is not above zero: %s', (_, factor) => {
    expect(() => factor(0, 300)).toThrow(RangeError);
    expect(() => factor(Number.NaN, 300)).toThrow(RangeError);
    expect(() => factor(1e5, 0)).toThrow(RangeError);
  });

  it('correct less when friction is small, since the built-in 85 % then takes off too much', () => {
    // 0.95 efficient: the correction is nearer the bare ratio of the air than J1349's own
    const bare = factorJ1349Friction(90000, 300, 400, 0);
    expect(factorJ1349Friction(90000, 300, 0.95, 0.05)).toBeLessThan(factorJ1349(90000, 300));
    expect(factorJ1349Friction(90000, 300, 0.95, 0.05)).toBeGreaterThan(bare);
  });

  it('reproduce the plain J1349 factor when friction is 15 % of indicated, within the rounding of 1.18 and 0.18', () => {
    fc.assert(
      fc.property(between(90000, 105000), between(15, 35), (pressure, t) => {
        const apart = factorJ1349Friction(pressure, kelvin(t), 85, 15) - factorJ1349(pressure, kelvin(t));
        expect(Math.abs(apart)).toBeLessThan(5e-4);
      }),
    );
  });

  it('need a brake torque above zero and a friction torque that is not negative', () => {
    expect(() => factorJ1349Friction(99000, 298, 0, 50)).toThrow(/Brake torque/);
    expect(() => factorJ1349Friction(99000, 298, 300, -1)).toThrow(/Friction torque/);
  });
});

describe('estimated friction torque', () => {
  it('lies midway between two rows halfway between their speeds, and grows with displacement', () => {
    const speed = (3500 * foot) / 60;
    const each = frictionTorque(speed, cubicInch) / poundFoot;
    expect(each).toBeCloseTo((0.233 + 0.308) / 2, 6); // the printed rows for 3,000 and 4,000 ft/min
    expect(frictionTorque(speed, 350 * cubicInch) / poundFoot).toBeCloseTo(350 * each, 3);
  });

  it('is refused beyond the table and for no displacement', () => {
    expect(() => frictionTorque(36, 0.005)).toThrow(RangeError);
    expect(() => frictionTorque(-1, 0.005)).toThrow(RangeError);
    expect(() => frictionTorque(10, 0)).toThrow(RangeError);
  });
});
