import { describe, expect, it } from 'vitest';
import { type Lobe, lobeAcceleration, lobeLift, noseHalfWidth } from '../../../src/physics/valve/lobe.ts';
import { lobeFromCard } from '../../../src/physics/valve/lobe-card.ts';
import {
  coilBindReserve,
  retainerReserve,
  separationSpeed,
  springForce,
  type SprungValve,
} from '../../../src/physics/valve/spring.ts';

const inch = 0.0254;
const deg = Math.PI / 180;
const pound = 4.4482216152605;

/** An invented spring: 110 lb on the seat, 330 lb/in. */
const spring = { seatForce: 110 * pound, rate: (330 * pound) / inch };

describe('springs', () => {
  it('push by their seat force and rate: 110 lb and 330 lb/in make 275 lb at half an inch', () =>
    expect(springForce(spring, 0.5 * inch) / pound).toBeCloseTo(275, 10));

  it('have left before coil bind what installed height, bind height and lift leave', () => {
    expect(coilBindReserve(1.75 * inch, 1.15 * inch, 0.471 * inch) / inch).toBeCloseTo(0.129, 12);
    expect(coilBindReserve(1.6 * inch, 1.15 * inch, 0.5 * inch)).toBeLessThan(0);
  });

  it('have left before the retainer meets the seal what the lift leaves', () =>
    expect(retainerReserve(0.55 * inch, 0.471 * inch) / inch).toBeCloseTo(0.079, 12));
});

describe('separationSpeed', () => {
  /** A nose in the shape of a cosine has its answer in closed form: hardest at the peak. */
  const round: SprungValve = {
    spring,
    mass: 0.2,
    rocker: 1.5,
    lash: 0,
    lift: (angle) => 0.008 * Math.cos(angle),
    acceleration: (angle) => -0.008 * Math.cos(angle),
    halfWidth: 1,
  };

  it('is the speed at which inertia equals the force at the peak of a round nose', () => {
    const force = spring.seatForce + spring.rate * 1.5 * 0.008;
    expect(separationSpeed(round)).toBeCloseTo(Math.sqrt(force / (0.2 * 1.5 * 0.008)), 6);
  });

  it('leaves the spring the stronger below it everywhere on the nose, and somewhere the weaker just above it', () => {
    const lobe = lobeFromCard({
      lobeLift: 0.31 * inch,
      seatLift: 0.006 * inch,
      seatDuration: 270 * deg,
      duration050: 220 * deg,
    }) as Lobe;
    const valve: SprungValve = {
      ...round,
      lash: 0.0004,
      lift: (angle) => lobeLift(lobe, angle),
      acceleration: (angle) => lobeAcceleration(lobe, angle),
      halfWidth: noseHalfWidth(lobe),
    };
    const speed = separationSpeed(valve);
    const spare = (at: number): number => {
      let least = Infinity;
      for (let i = -2000; i <= 2000; i++) {
        const angle = (i / 2000) * noseHalfWidth(lobe);
        const force = spring.seatForce + spring.rate * (1.5 * lobeLift(lobe, angle) - 0.0004);
        least = Math.min(least, force + 0.2 * 1.5 * lobeAcceleration(lobe, angle) * at ** 2);
      }
      return least;
    };
    expect(spare(speed * 0.999)).toBeGreaterThan(0);
    expect(spare(speed * 1.001)).toBeLessThan(0);
    expect((speed * 60) / (2 * Math.PI)).toBeGreaterThan(5000); // a street train with such a spring turns this high
    expect((speed * 60) / (2 * Math.PI)).toBeLessThan(12000);
  });

  it('falls with the root of the mass', () =>
    expect(separationSpeed({ ...round, mass: 0.8 }) / separationSpeed(round)).toBeCloseTo(0.5, 9));

  it('has no end on a lobe that never slows the valve, and is nothing without a spring', () => {
    expect(separationSpeed({ ...round, acceleration: () => 0 })).toBe(Infinity);
    expect(separationSpeed({ ...round, spring: { seatForce: 0, rate: 0 } })).toBe(0);
  });

  it('refuses a valve without mass', () => expect(() => separationSpeed({ ...round, mass: 0 })).toThrow(RangeError));
});
