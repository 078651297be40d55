import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  durationAt,
  type Lobe,
  lobeAcceleration,
  lobeArea,
  lobeLift,
  lobeVelocity,
  noseHalfWidth,
  peakLobeAcceleration,
  peakLobeVelocity,
} from '../../../src/physics/valve/lobe.ts';
import { lobeFromCard, type LobeCard } from '../../../src/physics/valve/lobe-card.ts';
import { Solver } from '../odex.ts';
import { DrawnLobe } from './drawn-lobe.ts';

const inch = 0.0254;
const deg = Math.PI / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A lobe the card of which is known to be answered. */
function lobeOf(card: LobeCard): Lobe {
  const lobe = lobeFromCard(card);
  if ('trouble' in lobe) throw new Error(`${lobe.figures.join(' and ')} ${lobe.trouble}`);
  return lobe;
}
const street: LobeCard = {
  lobeLift: 0.31 * inch,
  seatLift: 0.006 * inch,
  seatDuration: 270 * deg,
  duration050: 220 * deg,
};
const anyLobe = fc
  .record({
    lift: between(0.25, 0.42),
    seat: between(0.004, 0.012),
    share: between(0.8, 0.86),
    ramp: between(0.01, 0.98),
  })
  .map(({ lift, seat, share, ramp }) =>
    lobeOf({
      lobeLift: lift * inch,
      seatLift: seat * inch,
      seatDuration: 280 * deg,
      duration050: share * 280 * deg,
      rampHeight: ramp * seat * inch,
    }),
  );
const ends = (lobe: Lobe): number => lobe.ramp?.end ?? lobe.halfWidth;

describe('the motion of a lobe', () => {
  it('has the velocity and acceleration that fine differences give, on both flanks and ramps', () => {
    const h = 1e-5;
    fc.assert(
      fc.property(anyLobe, between(-1.05, 1.05), (lobe, share) => {
        const angle = share * ends(lobe);
        const velocity = (lobeLift(lobe, angle + h) - lobeLift(lobe, angle - h)) / (2 * h);
        const acceleration = (lobeVelocity(lobe, angle + h) - lobeVelocity(lobe, angle - h)) / (2 * h);
        expect(Math.abs(lobeVelocity(lobe, angle) - velocity)).toBeLessThan(1e-8);
        expect(Math.abs(lobeAcceleration(lobe, angle) - acceleration)).toBeLessThan(1e-6);
      }),
    );
  });

  it('joins its ramp with lift, velocity and acceleration, and leaves it with all three at zero', () => {
    fc.assert(
      fc.property(anyLobe, (lobe) => {
        const { start, end, height } = lobe.ramp!;
        for (const motion of [lobeLift, lobeVelocity, lobeAcceleration]) {
          const jump = motion(lobe, start * (1 + 1e-9)) - motion(lobe, start * (1 - 1e-9));
          expect(Math.abs(jump)).toBeLessThan(1e-9);
          expect(Math.abs(motion(lobe, end - 1e-4))).toBeLessThan(1e-8);
          expect(Math.abs(motion(lobe, end + 1e-4))).toBe(0);
        }
        expect(lobeLift(lobe, start) / height).toBeCloseTo(1, 7);
      }),
    );
  });

  it('falls throughout, and no ramp of it reaches the seat lift', () => {
    const lobe = lobeOf({ ...street, rampHeight: 0.0059 * inch });
    expect(lobe.ramp!.height).toBeLessThan(street.seatLift);
    expect(2 * lobe.ramp!.start).toBeGreaterThan(street.seatDuration);
    let last = Infinity;
    for (let angle = 0; angle < ends(lobe); angle += 0.001) {
      expect(lobeLift(lobe, angle)).toBeLessThan(last);
      last = lobeLift(lobe, angle);
    }
    expect(lobeLift(lobe, ends(lobe))).toBe(0);
  });

  it('still falls smoothly where the ramp is joined above the bend of a very full flank', () => {
    const full = new DrawnLobe(55, 2, 0.25 * inch, 140 * deg);
    const lobe = lobeOf({
      lobeLift: full.lift,
      seatLift: 0.045 * inch,
      seatDuration: full.duration(0.045 * inch),
      duration050: full.duration(0.05 * inch),
      rampHeight: 0.0449 * inch,
    });
    const { start, end } = lobe.ramp!;
    expect(lobeAcceleration(lobe, start)).toBeLessThan(0);
    const fastest = peakLobeVelocity(lobe);
    for (let i = 1; i < 2000; i++) {
      const speed = -lobeVelocity(lobe, (end * i) / 2000);
      expect(speed).toBeGreaterThan(0);
      expect(speed).toBeLessThanOrEqual(fastest * (1 + 1e-12));
    }
    expect(noseHalfWidth(lobe)).toBeGreaterThan(start);
  });

  it('has the area under it that an integration with ODEX gives', () => {
    for (const lobe of [lobeOf(street), lobeOf({ ...street, rampHeight: 0 })]) {
      const solver = new Solver(1);
      solver.absoluteTolerance = solver.relativeTolerance = 1e-11;
      const pieces = [-ends(lobe), -(lobe.ramp?.start ?? 2), 0, lobe.ramp?.start ?? 2, ends(lobe)];
      const area = pieces.slice(1).reduce((sum, to, i) => {
        const { y, outcome } = solver.solve((angle) => [lobeLift(lobe, angle)], pieces[i]!, [0], to);
        expect(outcome).toBe(0);
        return sum + y[0]!;
      }, 0);
      expect(Math.abs(lobeArea(lobe) - area)).toBeLessThan(1e-10);
    }
  });

  it('exceeds its peaks nowhere, and reaches them', () => {
    fc.assert(
      fc.property(anyLobe, (lobe) => {
        let [fastest, hardest] = [0, 0];
        for (let i = 0; i <= 4000; i++) {
          const angle = (ends(lobe) * i) / 4000;
          fastest = Math.max(fastest, Math.abs(lobeVelocity(lobe, angle)));
          hardest = Math.max(hardest, lobeAcceleration(lobe, angle));
        }
        expect(fastest / peakLobeVelocity(lobe)).toBeCloseTo(1, 4);
        expect(fastest).toBeLessThanOrEqual(peakLobeVelocity(lobe) * (1 + 1e-12));
        expect(hardest / peakLobeAcceleration(lobe)).toBeCloseTo(1, 3);
        expect(hardest).toBeLessThanOrEqual(peakLobeAcceleration(lobe) * (1 + 1e-6));
      }),
      { numRuns: 30 },
    );
  });
});

describe('durationAt', () => {
  it('is twice the angle at which the lobe has that lift, in flank and ramp alike', () => {
    fc.assert(
      fc.property(anyLobe, between(0.0001, 0.9999), (lobe, share) => {
        for (const lift of [share * lobe.lift, share * lobe.ramp!.height])
          expect(Math.abs(lobeLift(lobe, durationAt(lobe, lift) / 2) - lift)).toBeLessThan(1e-11);
      }),
    );
  });

  it("meets the polynomial's own end when the ramp shrinks to next to nothing", () => {
    const bare = lobeOf({ ...street, rampHeight: 0 });
    for (const rampHeight of [Number.MIN_VALUE, 1e-20, 1e-9]) expect(lobeOf({ ...street, rampHeight })).toEqual(bare);
    const { ramp } = lobeOf({ ...street, rampHeight: 1.1e-5 * street.lobeLift });
    expect(ramp!.end).toBeGreaterThan(bare.halfWidth - 1 * deg);
    expect(ramp!.end).toBeLessThan(bare.halfWidth);
  });

  it('is nothing above the peak and the whole lobe at no lift', () => {
    const lobe = lobeOf(street);
    expect(durationAt(lobe, lobe.lift)).toBe(0);
    expect(durationAt(lobe, 2 * lobe.lift)).toBe(0);
    expect(durationAt(lobe, 0)).toBe(2 * lobe.ramp!.end);
    expect(durationAt(lobeOf({ ...street, rampHeight: 0 }), 0)).toBeGreaterThan(durationAt(lobe, 0));
  });
});
