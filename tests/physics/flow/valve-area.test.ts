import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastArea, throatArea, throatLift, type ValveSeat } from '../../../src/physics/flow/valve-area.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anySeat: fc.Arbitrary<ValveSeat> = fc
  .record({
    diameter: between(0.02, 0.06),
    width: between(0.01, 0.1),
    angle: between(0.4, 1),
    throat: between(0.6, 0.95),
    stem: between(0.1, 0.25),
  })
  .map(({ diameter, width, throat, stem, angle }) => ({
    diameter,
    angle,
    width: width * diameter,
    throat: throat * diameter,
    stem: stem * diameter,
  }));
const many = { seed: 20260802, numRuns: 300 };

/**
 * Valve and seat drawn as two lines in a plane through the axis; the least side of a cone between a point of the one and
 * a point of the other, looked for step by step.
 */
function drawn({ diameter, width, angle }: ValveSeat, lift: number): number {
  const inner = diameter / 2 - width;
  const steps = 200;
  let least = Infinity;
  for (let i = 0; i <= steps; i++)
    for (let j = 0; j <= steps; j++) {
      const [onValve, onSeat] = [inner + (width * i) / steps, inner + (width * j) / steps];
      const along = lift - (onSeat - onValve) * Math.tan(angle);
      least = Math.min(least, Math.PI * (onValve + onSeat) * Math.hypot(onSeat - onValve, along));
    }
  return least;
}

describe('the least area under a valve', () => {
  it('is the least cone between the two faces as drawn, until the throat is less', () => {
    // The formulas take the element square to the seat, which the drawing undercuts by a hair.
    for (const degrees of [30, 45, 60])
      for (const width of [1e-3, 2e-3, 4e-3])
        for (const lift of [0.5e-3, 1e-3, 2e-3, 4e-3, 6e-3]) {
          const seat = { diameter: 0.044, width, angle: (degrees * Math.PI) / 180, throat: 0.043, stem: 0.002 };
          const least = Math.min(drawn(seat, lift), (Math.PI / 4) * (0.043 ** 2 - 0.002 ** 2));
          expect(Math.abs(leastArea(seat, lift) / least - 1), `${degrees} ${width} ${lift}`).toBeLessThan(0.012);
        }
  });
  it('never falls as the valve lifts, and makes no jump where one formula follows another', () => {
    fc.assert(
      fc.property(anySeat, (seat) => {
        const areas = Array.from({ length: 201 }, (_, i) => leastArea(seat, (seat.diameter * i) / 400));
        const most = Math.PI * seat.diameter * (seat.diameter / 400);
        areas.forEach((area, i) => {
          if (i === 0) return expect(area).toBe(0);
          expect(area).toBeGreaterThanOrEqual(areas[i - 1]! - 1e-15);
          expect(area - areas[i - 1]!).toBeLessThan(1.3 * most);
        });
      }),
      many,
    );
  });
  it('is the throat’s from the lift named on, and less before', () => {
    fc.assert(
      fc.property(anySeat, (seat) => {
        const lift = throatLift(seat);
        expect(leastArea(seat, lift) / throatArea(seat)).toBeCloseTo(1, 9);
        expect(leastArea(seat, 2 * lift)).toBe(throatArea(seat));
        expect(leastArea(seat, 0.99 * lift)).toBeLessThan(throatArea(seat));
      }),
      many,
    );
  });
  it('is refused in words for a valve that cannot be made', () => {
    const seat: ValveSeat = { diameter: 0.04, width: 1e-3, angle: 0.8, throat: 0.035, stem: 0.008 };
    for (const [wrong, said] of [
      [{ width: 0.02 }, /seat is too wide/],
      [{ angle: 0 }, /angle of the seat/],
      [{ angle: 2 }, /angle of the seat/],
      [{ stem: 0.035 }, /stem fills the throat/],
      [{ throat: 0.041 }, /wider than the valve/],
    ] as const)
      for (const answer of [() => leastArea({ ...seat, ...wrong }, 0.01), () => throatLift({ ...seat, ...wrong })])
        expect(answer).toThrow(said);
  });
});
