import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  closing,
  durationBetween,
  exhaustCenterline,
  opening,
  separationFromOverlap,
} from '../../src/physics/cam-events.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyLobe = [between(3, 6), between(1.5, 2.3)] as const;

describe('cam events', () => {
  it('come back to the duration and the centerline they came from', () => {
    fc.assert(
      fc.property(...anyLobe, (duration, centerline) => {
        const [opens, closes] = [opening(duration, centerline), closing(duration, centerline)];
        expect(durationBetween(opens, closes)).toBeCloseTo(duration, 12);
        expect((closes - opens + Math.PI) / 2).toBeCloseTo(centerline, 12);
      }),
    );
  });

  it('put the lobes their separation apart: half the crank angle between the two middles', () => {
    fc.assert(
      fc.property(between(1.7, 2.1), between(1.5, 2.3), (separation, intake) => {
        expect((intake + exhaustCenterline(separation, intake)) / 2).toBeCloseTo(separation, 12);
      }),
    );
  });

  it('overlap by what the separation was found from', () => {
    fc.assert(
      fc.property(between(4, 5.5), between(-0.3, 1.5), between(1.5, 2.3), (duration, overlap, intake) => {
        const exhaust = exhaustCenterline(separationFromOverlap(duration, overlap), intake);
        expect(opening(duration, intake) + opening(duration, exhaust)).toBeCloseTo(overlap, 12);
      }),
    );
  });
});
