import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  lobeFromTable,
  peakTableAcceleration,
  peakTableVelocity,
  tableAcceleration,
  tableArea,
  tableDuration,
  tableFlanks,
  tableLift,
  tableVelocity,
} from '../../../src/physics/valve/lobe-table.ts';
import { Solver } from '../odex.ts';

const deg = Math.PI / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

// An invented lobe, the square of a raised cosine whose phase runs through a parabola: its closing flank is the longer.
const lift = 0.008;
const [opens, closes] = [130 * deg, 155 * deg];
const curl = (Math.PI * (opens - closes)) / (opens * closes * (opens + closes));
const pace = Math.PI / opens + curl * opens;
const phase = (angle: number): number => (pace + curl * angle) * angle;
const exact = {
  lift: (angle: number) => lift * ((1 + Math.cos(phase(angle))) / 2) ** 2,
  velocity: (angle: number) =>
    (-lift / 2) * (1 + Math.cos(phase(angle))) * Math.sin(phase(angle)) * (pace + 2 * curl * angle),
  /** Where a flank has a height: the phase, then the parabola backward. */
  place: (height: number, way: 1 | -1) => {
    const u = way * Math.acos(2 * Math.sqrt(height / lift) - 1);
    return (2 * u) / (pace + Math.sqrt(pace * pace + 4 * curl * u));
  },
};

/** Read every two crank degrees, from a wheel whose zero is not at the peak. */
const zero = 71.3 * deg;
const angles = Array.from({ length: 145 }, (_, i) => -opens + (i * (opens + closes)) / 144);
const lifts = angles.map((angle, i) => (i === 0 || i === 144 ? 0 : exact.lift(angle)));
const lobe = lobeFromTable(
  angles.map((angle) => angle + zero),
  lifts,
);

describe('a measured lobe', () => {
  it('has its zero at the peak, wherever the wheel had it', () => {
    expect(lobe.x[0]).toBeCloseTo(-opens, 4);
    expect(lobe.lift).toBeCloseTo(lift, 8);
    expect(tableLift(lobe, 0)).toBeCloseTo(lobe.lift, 15);
    expect(Math.abs(tableVelocity(lobe, 0))).toBeLessThan(1e-12);
  });

  it('passes through every row', () =>
    angles.forEach((_, i) => expect(tableLift(lobe, lobe.x[i]!)).toBeCloseTo(lifts[i]!, 14)));

  it('is the lobe that was read, between the rows too, in lift and velocity', () => {
    fc.assert(
      fc.property(between(-opens, closes), (angle) => {
        expect(Math.abs(tableLift(lobe, angle) - exact.lift(angle))).toBeLessThan(1e-6 * lift);
        expect(Math.abs(tableVelocity(lobe, angle) - exact.velocity(angle))).toBeLessThan(1e-4 * lift);
      }),
    );
  });

  it('has the velocity and acceleration that fine differences give', () => {
    const h = 1e-6;
    fc.assert(
      fc.property(between(-opens + 0.01, closes - 0.01), (angle) => {
        const velocity = (tableLift(lobe, angle + h) - tableLift(lobe, angle - h)) / (2 * h);
        const acceleration = (tableVelocity(lobe, angle + h) - tableVelocity(lobe, angle - h)) / (2 * h);
        expect(Math.abs(tableVelocity(lobe, angle) - velocity)).toBeLessThan(1e-8);
        expect(Math.abs(tableAcceleration(lobe, angle) - acceleration)).toBeLessThan(1e-6);
      }),
    );
  });

  it('passes a lift on each flank where the lobe that was read does', () => {
    fc.assert(
      fc.property(between(0.0005, 0.995), (share) => {
        const height = share * lift;
        const { opening, closing } = tableFlanks(lobe, height);
        expect(Math.abs(opening - exact.place(height, -1))).toBeLessThan(0.01 * deg);
        expect(Math.abs(closing - exact.place(height, 1))).toBeLessThan(0.01 * deg);
        expect(tableDuration(lobe, height)).toBe(closing - opening);
      }),
    );
  });

  it('has no duration above its peak and all of the table at no lift', () => {
    expect(tableDuration(lobe, lift * 1.01)).toBe(0);
    expect(tableDuration(lobe, 0)).toBeCloseTo(opens + closes, 9);
    expect(tableDuration(lobe, -1)).toBeCloseTo(opens + closes, 9);
  });

  it('has the area of the lobe that was read, as an integration with ODEX gives it', () => {
    const solver = new Solver(1);
    solver.absoluteTolerance = solver.relativeTolerance = 1e-11;
    const { y, outcome } = solver.solve((angle) => [exact.lift(angle)], -opens, [0], closes);
    expect(outcome).toBe(0);
    expect(tableArea(lobe) / y[0]!).toBeCloseTo(1, 7);
  });

  it('has the greatest speed and acceleration of the lobe that was read, sought in fine steps', () => {
    let [fastest, hardest] = [0, 0];
    for (let angle = -opens; angle < closes; angle += 1e-4) {
      fastest = Math.max(fastest, Math.abs(exact.velocity(angle)));
      hardest = Math.max(hardest, (exact.velocity(angle + 5e-5) - exact.velocity(angle - 5e-5)) / 1e-4);
    }
    expect(peakTableVelocity(lobe) / fastest).toBeCloseTo(1, 5);
    expect(peakTableAcceleration(lobe) / hardest).toBeCloseTo(1, 2);
  });

  it('finds a peak that lies between two rows, on either side of the highest', () => {
    for (const shift of [-0.8, -0.3, 0, 0.3, 0.8]) {
      const rows = angles.map((angle) => angle + shift * deg).filter((angle) => angle > -opens && angle < closes);
      const between = lobeFromTable([-opens, ...rows, closes], [0, ...rows.map(exact.lift), 0]);
      expect(between.x[0]).toBeCloseTo(-opens, 4);
      expect(between.lift).toBeCloseTo(lift, 8);
    }
  });

  it('is never below zero, and shut outside its table', () => {
    const stop = lobeFromTable([0, 0.2, 0.4, 0.6, 0.8, 1, 1.2], [0, 0, 0, 0.004, 0, 0, 0]);
    for (let angle = -2; angle < 2; angle += 0.01) expect(tableLift(stop, angle)).toBeGreaterThanOrEqual(0);
    expect(tableFlanks(stop, 0)).toEqual({ opening: expect.closeTo(-0.2, 12), closing: expect.closeTo(0.2, 12) });
    for (const angle of [-1, 1])
      expect([tableLift, tableVelocity, tableAcceleration].map((f) => f(stop, angle))).toEqual([0, 0, 0]);
  });
});

describe('lobeFromTable', () => {
  it.each([
    ['Rows 3 and 4 of the lobe table stand at the same angle', [0, 1, 2, 2, 4], [0, 1, 2, 1, 0]],
    ['Row 4 of the lobe table stands before row 3: sort the rows', [0, 1, 3, 2, 4], [0, 1, 2, 1, 0]],
    ['The two columns of the lobe table differ in length', [0, 1, 2, 3, 4], [0, 1, 2, 0]],
    ['A lobe table needs at least five rows', [0, 1, 2, 3], [0, 1, 1, 0]],
    ['Row 2 of the lobe table needs an angle', [0, NaN, 2, 3, 4], [0, 1, 2, 1, 0]],
    ['Row 3 of the lobe table needs an angle and a lift that is not below', [0, 1, 2, 3, 4], [0, 1, -2, 1, 0]],
    ['The lobe table must begin and end on the base circle', [0, 1, 2, 3, 4], [0, 1, 2, 1, 0.1]],
    ['The lobe table has no lift', [0, 1, 2, 3, 4], [0, 0, 0, 0, 0]],
    ['The lobe table is longer than one turn of the camshaft', [0, 1, 2, 3, 13], [0, 1, 2, 1, 0]],
  ])('refuses in words: %s', (words, x, y) => expect(() => lobeFromTable(x, y)).toThrow(words));
});
