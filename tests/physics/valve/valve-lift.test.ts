import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closing, opening } from '../../../src/physics/cam-events.ts';
import { durationAt, type Lobe, lobeAcceleration, lobeLift } from '../../../src/physics/valve/lobe.ts';
import { lobeFromCard } from '../../../src/physics/valve/lobe-card.ts';
import { lobeFromTable } from '../../../src/physics/valve/lobe-table.ts';
import { profileAcceleration, profileFlanks, profileLift } from '../../../src/physics/valve/profile.ts';
import {
  exhaustEvents,
  intakeEvents,
  solidSeatFlanks,
  solidSeatLift,
  valveLift,
} from '../../../src/physics/valve/valve-lift.ts';

const inch = 0.0254;
const deg = Math.PI / 180;
const lobe = lobeFromCard({
  lobeLift: 0.36 * inch,
  seatLift: 0.02 * inch,
  seatDuration: 276 * deg,
  duration050: 246 * deg,
}) as Lobe;

describe('valveLift', () => {
  it('is what the invented street cams have at the valve, worked by hand: lobe lift times rocker ratio', () => {
    const printed = [
      [0.31, 1.52, 0.471],
      [0.315, 1.52, 0.479],
      [0.29, 1.52, 0.441],
      [0.295, 1.52, 0.448],
      [0.345, 1.52, 0.524],
      [0.262, 1.58, 0.414],
      [0.268, 1.5, 0.402],
    ] as const;
    for (const [tappet, rocker, valve] of printed)
      expect(Math.abs(valveLift(tappet * inch, rocker, 0) / inch - valve)).toBeLessThan(0.0005);
  });

  it('gives up the lash, and is nothing until the lash is taken up', () => {
    expect(valveLift(0.3 * inch, 1.5, 0.022 * inch) / inch).toBeCloseTo(0.428, 12);
    expect(valveLift(0.01 * inch, 1.5, 0.022 * inch)).toBe(0);
  });
});

describe('the seat events of a solid tappet', () => {
  it('stand where the tappet has risen by the lash over the rocker ratio: valve just off its seat inside them', () => {
    const [lash, rocker] = [0.022 * inch, 1.6];
    const { opening: from, closing: to } = solidSeatFlanks(lobe, lash, rocker);
    expect(solidSeatLift(lash, rocker) / inch).toBeCloseTo(0.01375, 12);
    for (const [edge, inward] of [
      [from, 1],
      [to, -1],
    ] as const) {
      expect(valveLift(lobeLift(lobe, edge - inward * 1e-6), rocker, lash)).toBe(0);
      expect(valveLift(lobeLift(lobe, edge + inward * 1e-6), rocker, lash)).toBeGreaterThan(0);
    }
  });

  it('come later and go sooner with more lash, and the other way round with more ratio', () => {
    const open = (lash: number, rocker: number): number => {
      const { opening: from, closing: to } = solidSeatFlanks(lobe, lash * inch, rocker);
      return to - from;
    };
    expect(open(0.026, 1.5)).toBeLessThan(open(0.022, 1.5));
    expect(open(0.022, 1.6)).toBeGreaterThan(open(0.022, 1.5));
  });

  it('are those of the duration at that lift when the lobe is symmetric', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.6, max: 2.2, noNaN: true }), (centerline) => {
        const lift = solidSeatLift(0.02 * inch, 1.5);
        const flanks = solidSeatFlanks(lobe, 0.02 * inch, 1.5);
        const duration = durationAt(lobe, lift);
        const intake = intakeEvents(flanks, centerline);
        expect(intake.opens).toBeCloseTo(opening(duration, centerline), 12);
        expect(intake.closes).toBeCloseTo(closing(duration, centerline), 12);
        const exhaust = exhaustEvents(flanks, centerline);
        expect(exhaust.opens).toBeCloseTo(closing(duration, centerline), 12);
        expect(exhaust.closes).toBeCloseTo(opening(duration, centerline), 12);
      }),
    );
  });

  it('follow each flank of an unsymmetric lobe: a longer closing side closes later, and opens no sooner', () => {
    const flanks = { opening: -125 * deg, closing: 140 * deg };
    const intake = intakeEvents(flanks, 108 * deg);
    expect(intake.opens / deg).toBeCloseTo(17, 9);
    expect(intake.closes / deg).toBeCloseTo(68, 9);
    const exhaust = exhaustEvents(flanks, 112 * deg);
    expect(exhaust.opens / deg).toBeCloseTo(57, 9);
    expect(exhaust.closes / deg).toBeCloseTo(28, 9);
  });
});

describe('a lobe measured from the one on the card', () => {
  const end = durationAt(lobe, 0) / 2;
  const angles = Array.from({ length: 301 }, (_, i) => -end + (i * 2 * end) / 300);
  const measured = lobeFromTable(
    angles,
    angles.map((angle) => lobeLift(lobe, angle)),
  );

  it('moves the tappet alike', () => {
    for (let angle = -3; angle < 3; angle += 0.01) {
      expect(Math.abs(profileLift(measured, angle) - profileLift(lobe, angle))).toBeLessThan(1e-8);
      expect(Math.abs(profileAcceleration(measured, angle) - lobeAcceleration(lobe, angle))).toBeLessThan(2e-4);
    }
    expect(profileAcceleration(lobe, 0)).toBe(lobeAcceleration(lobe, 0));
  });

  it('has the flanks of the card', () => {
    for (const lift of [0.0137, 0.02, 0.05, 0.2]) {
      const [ours, theirs] = [profileFlanks(measured, lift * inch), profileFlanks(lobe, lift * inch)];
      expect(Math.abs(ours.opening - theirs.opening)).toBeLessThan(0.01 * deg);
      expect(Math.abs(ours.closing - theirs.closing)).toBeLessThan(0.01 * deg);
    }
  });
});
