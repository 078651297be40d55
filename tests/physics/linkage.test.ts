import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dwell,
  linkage,
  peakPistonAcceleration,
  peakPistonSpeed,
  peakPistonSpeedAngle,
  pistonAcceleration,
  pistonDrop,
  pistonVelocity,
} from '../../src/physics/linkage.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyLinkage = fc
  .record({ stroke: between(0.05, 0.12), ratio: between(1.2, 2.5), share: between(-0.05, 0.05) })
  .map(({ stroke, ratio, share }) => linkage(stroke, ratio * stroke, share * stroke));
const anyAngle = between(-Math.PI, Math.PI);

describe('pistonDrop', () => {
  it('is nothing at the zero of the wheel, the travel at the true bottom, and between the two elsewhere', () => {
    fc.assert(
      fc.property(anyLinkage, anyAngle, (l, angle) => {
        expect(Math.abs(pistonDrop(l, 0))).toBeLessThan(1e-15);
        expect(pistonDrop(l, l.bottomAngle)).toBeCloseTo(l.travel, 14);
        expect(pistonDrop(l, angle)).toBeGreaterThan(-1e-15);
        expect(pistonDrop(l, angle)).toBeLessThan(l.travel + 1e-15);
      }),
    );
  });

  it('grows with the engine: lengths k times as long give k times the drop', () => {
    fc.assert(
      fc.property(anyLinkage, anyAngle, between(0.2, 5), (l, angle, k) => {
        const larger = linkage(2 * l.throw * k, l.rod * k, -l.offset * k);
        expect(pistonDrop(larger, angle)).toBeCloseTo(k * pistonDrop(l, angle), 14);
      }),
    );
  });

  it('is mirrored when the pin is offset to the other side', () => {
    fc.assert(
      fc.property(anyLinkage, anyAngle, (l, angle) => {
        const mirror = linkage(2 * l.throw, l.rod, l.offset);
        expect(pistonDrop(mirror, -angle)).toBeCloseTo(pistonDrop(l, angle), 14);
      }),
    );
  });

  it('falls below the stroke by nothing without an offset and exceeds it by a little with one', () => {
    expect(linkage(0.09, 0.15, 0).travel).toBeCloseTo(0.09, 15);
    const { travel } = linkage(0.09, 0.15, 0.001);
    expect(travel).toBeGreaterThan(0.09);
    expect(travel).toBeLessThan(0.09001);
  });
});

describe('velocity and acceleration', () => {
  it('are what fine differences of the drop give', () => {
    const h = 1e-5;
    fc.assert(
      fc.property(anyLinkage, anyAngle, between(1, 700), (l, angle, speed) => {
        const slope = (pistonDrop(l, angle + h) - pistonDrop(l, angle - h)) / (2 * h);
        expect(Math.abs(pistonVelocity(l, angle, speed) / speed - slope)).toBeLessThan(1e-10);
        const change = (pistonVelocity(l, angle + h, speed) - pistonVelocity(l, angle - h, speed)) / (2 * h);
        expect(Math.abs(pistonAcceleration(l, angle, speed) / speed ** 2 - change / speed)).toBeLessThan(1e-9);
      }),
    );
  });

  it('vanish, the velocity, at both dead centers', () => {
    fc.assert(
      fc.property(anyLinkage, (l) => {
        expect(Math.abs(pistonVelocity(l, 0, 1))).toBeLessThan(1e-15);
        expect(Math.abs(pistonVelocity(l, l.bottomAngle, 1))).toBeLessThan(1e-15);
      }),
    );
  });
});

describe('the peaks', () => {
  it('are not exceeded anywhere around the turn', () => {
    fc.assert(
      fc.property(anyLinkage, anyAngle, (l, angle) => {
        expect(Math.abs(pistonVelocity(l, angle, 100))).toBeLessThanOrEqual(peakPistonSpeed(l, 100) * (1 + 1e-12));
        expect(Math.abs(pistonAcceleration(l, angle, 100))).toBeLessThanOrEqual(
          peakPistonAcceleration(l, 100) * (1 + 1e-12),
        );
      }),
    );
  });

  it('put the greatest acceleration of an ordinary rod at top: r w2 (1 + r/l), as every textbook has it', () =>
    expect(peakPistonAcceleration(linkage(0.09, 0.15, 0), 600)).toBeCloseTo(0.045 * 600 ** 2 * (1 + 0.045 / 0.15), 6));

  it('find the greater acceleration of a very short rod away from the dead centers', () =>
    expect(peakPistonAcceleration(linkage(2, 1.05, 0), 1)).toBeGreaterThan(1 + 1 / 1.05));

  it('lie on the way up, before top dead center, when the pin is offset away from the major thrust face', () => {
    expect(peakPistonSpeedAngle(linkage(0.09, 0.15, 0.002))).toBeGreaterThan(0);
    expect(peakPistonSpeedAngle(linkage(0.09, 0.15, -0.002))).toBeLessThan(0);
  });
});

describe('dwell', () => {
  it('is the crank angle the piston spends within the depth, counted in fine steps, on an offset pin too', () => {
    const l = linkage(0.09, 0.15, 0.003);
    const steps = 200_000;
    for (const depth of [0.001, 0.02, 0.06]) {
      let near = 0;
      for (let i = 0; i < steps; i++) if (pistonDrop(l, (2 * Math.PI * (i + 0.5)) / steps) < depth) near++;
      expect(dwell(l, depth)).toBeCloseTo((near / steps) * 2 * Math.PI, 3);
    }
  });

  it('grows with rod length at the same depth', () =>
    expect(dwell(linkage(0.09, 0.16, 0), 0.001)).toBeGreaterThan(dwell(linkage(0.09, 0.14, 0), 0.001)));

  it('is nothing at no depth and a full turn at the whole travel', () => {
    const l = linkage(0.09, 0.15, 0.001);
    expect(dwell(l, 0)).toBe(0);
    expect(dwell(l, -0.001)).toBe(0);
    expect(dwell(l, l.travel)).toBe(2 * Math.PI);
  });
});

describe('linkage', () => {
  it('refuses a rod on which the crank cannot turn', () => {
    expect(() => linkage(0.09, 0.045, 0)).toThrow(RangeError);
    expect(() => linkage(0.09, 0.046, -0.001)).toThrow(
      'The rod must be longer than half the stroke plus the pin offset',
    );
    expect(() => linkage(0.09, NaN, 0)).toThrow(RangeError);
  });

  it('refuses an engine without a stroke', () =>
    expect(() => linkage(0, 0.15, 0)).toThrow('The stroke must be greater than zero.'));
});
