import { describe, expect, it } from 'vitest';
import { root } from '../../../src/numerics/root.ts';
import {
  helmholtzFrequency,
  primarySpeed,
  quarterWaveFrequency,
  speedOfShutSwings,
  tuningVolume,
} from '../../../src/physics/flow/tuning.ts';

const [inch, foot, rpm, deg] = [0.0254, 0.3048, Math.PI / 30, Math.PI / 180];

describe('a runner on a cylinder', () => {
  it('swings slower than the plug of gas would, by a share that goes away as it gets short', () => {
    // Linear acoustics of a pipe on a volume: tan(k length) = area / (k volume).
    const area = 1.4e-3;
    const volume = 4e-4;
    const share = (length: number): number => {
      const k = root(
        (x) => x * volume * Math.sin(x * length) - area * Math.cos(x * length),
        1e-6,
        Math.PI / 2 / length,
      )!;
      return (2 * Math.PI * helmholtzFrequency({ length, area }, volume, 343)) / 343 / k;
    };
    const shares = [0.3, 0.1, 0.03, 0.01].map(share);
    for (const each of shares) expect(each).toBeGreaterThan(1);
    shares.forEach((each, i) => i > 0 && expect(each).toBeLessThan(shares[i - 1]!));
    // To second order the plug is fast by a sixth of the pipe's volume over the other.
    expect((shares.at(-1)! - 1) / ((area * 0.01) / volume / 6)).toBeCloseTo(1, 1);
  });
  it('works against clearance and half the stroke', () => {
    const [swept, clearance] = [500e-6, 62.5e-6]; // a ratio of 9
    expect(tuningVolume(swept, 9)).toBeCloseTo(swept / 2 + clearance, 15);
  });
  it('makes its whole swings in the time the valve is shut', () => {
    const speed = speedOfShutSwings(quarterWaveFrequency(0.25, 340), 270 * deg, 4);
    const shut = (720 - 270) / (6 * (speed / rpm)); // seconds: a turn is 60 / rpm
    expect(340 / (4 * 0.25)).toBe(340); // swings a second
    expect(shut * 340).toBeCloseTo(4, 12);
  });
});

describe('a primary', () => {
  // A. G. Bell, 1981, from memory: 850 x (180 + opening before bottom) / rpm inches, of which 3 are the port.
  it.each([
    [73, 6000],
    [60, 4500],
    [85, 7500],
  ])('for an opening at %f degrees and %f rpm is as long as the trade makes it', (opening, speed) => {
    const length = ((850 * (180 + opening)) / speed) * inch;
    expect(primarySpeed(length, 1700 * foot, opening * deg) / rpm).toBeCloseTo(speed, 6);
  });
});
