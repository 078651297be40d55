import { describe, expect, it } from 'vitest';
import { compressionRatio, creviceVolume, cylinderVolume, meanPistonSpeed } from '../../src/physics/volumes.ts';

describe('volumes', () => {
  it('count a proud piston as volume taken away', () =>
    expect(cylinderVolume(0.1, -0.0005)).toBe(-cylinderVolume(0.1, 0.0005)));

  it('make the crevice a thin ring: mean circumference times half the diametral gap times height', () => {
    const [bore, height, clearance] = [0.1, 0.007, 0.0006];
    const ring = Math.PI * (bore - clearance / 2) * (clearance / 2) * height; // Pappus
    expect(creviceVolume(bore, height, clearance)).toBeCloseTo(ring, 18);
    expect(creviceVolume(bore, height, 0)).toBe(0);
  });

  it('give a ratio of two when the chamber is as large as the swept volume', () =>
    expect(compressionRatio(500, 500)).toBe(2));

  it('refuse a chamber without volume, as when a dome fills it', () => {
    expect(() => compressionRatio(500, 0)).toThrow('No volume is left above the piston at top dead center.');
    expect(() => compressionRatio(500, -3)).toThrow(RangeError);
  });

  it('let the piston cover two strokes a turn', () => expect(meanPistonSpeed(0.09, 2 * Math.PI)).toBeCloseTo(0.18, 15));
});
