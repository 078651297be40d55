import { describe, expect, it } from 'vitest';
import {
  accessoryPressure,
  auxiliaryFriction,
  crankshaftFriction,
  gasLoadFriction,
  ordinaryBearings,
  reciprocatingFriction,
  rubbingFriction,
  valveTrainFriction,
} from '../../../src/physics/cycle/friction.ts';
import { powerFromTorque } from '../../../src/physics/performance.ts';
import { meanPistonSpeed } from '../../../src/physics/volumes.ts';

const rpm = Math.PI / 30;
const kPa = 1000;

/** An invented small four, of the kind Barnes-Moss measured. */
const four = { bore: 0.08, stroke: 0.08, cylinders: 4, isVee: false, valvesPerCylinder: 2, staticRatio: 9 };
const eight = { bore: 0.1016, stroke: 0.0884, cylinders: 8, isVee: true, valvesPerCylinder: 2, staticRatio: 9.5 };

describe('rubbingFriction', () => {
  it('is the sum of its parts', () => {
    const speed = 3400 * rpm;
    const bearings = ordinaryBearings(eight);
    const parts = [
      crankshaftFriction(eight, bearings, speed),
      reciprocatingFriction(eight, bearings, speed),
      gasLoadFriction(eight.staticRatio, meanPistonSpeed(eight.stroke, speed)),
      valveTrainFriction(eight, bearings, speed),
      auxiliaryFriction(speed),
    ];
    expect(Math.min(...parts)).toBeGreaterThan(3 * kPa);
    expect(rubbingFriction(eight, speed)).toBeCloseTo(
      parts.reduce((a, b) => a + b),
      6,
    );
  });

  it('stays below what small fours take when motored, which contains pumping, and is more than a third of it', () => {
    // Barnes-Moss, IMechE C343/73, as Heywood, 1988, eq. 13.6 (from memory): 0.97 + 0.15 N + 0.05 N2 bar, N in 1000 rpm
    for (const thousands of [1.5, 2, 3, 4, 5, 6]) {
      const motored = (97 + 15 * thousands + 5 * thousands ** 2) * kPa;
      const rubbing = rubbingFriction(four, thousands * 1000 * rpm);
      expect(rubbing).toBeLessThan(motored);
      expect(rubbing).toBeGreaterThan(motored / 3);
    }
  });

  it('rises with speed from 1500 rpm on, and with the compression ratio', () => {
    const at = [1500, 2500, 3500, 4500, 5500, 6500].map((speed) => rubbingFriction(eight, speed * rpm));
    expect(at).toEqual(at.toSorted((a, b) => a - b));
    expect(rubbingFriction({ ...eight, staticRatio: 11 }, 300)).toBeGreaterThan(rubbingFriction(eight, 300));
  });

  it('gives a vee, with two rods on a crankpin, a main bearing more than it has throws', () => {
    expect(ordinaryBearings(eight).count).toBe(5);
    expect(ordinaryBearings(four).count).toBe(5);
    expect(ordinaryBearings({ ...eight, cylinders: 6 }).count).toBe(4);
  });

  it('is refused for a crankshaft that stands still', () => {
    expect(() => rubbingFriction(four, 0)).toThrow('must turn');
    expect(() => accessoryPressure(5e-3, 0)).toThrow('must turn');
  });
});

describe('accessoryPressure', () => {
  /** kW of a 4.3 liter engine's accessories. */
  const power = (speed: number): number =>
    powerFromTorque((accessoryPressure(4.3e-3, speed * rpm) * 4.3e-3) / (4 * Math.PI), speed * rpm) / 1000;

  it('is hardly more than the alternator’s kilowatt at idle', () => {
    expect(power(700)).toBeGreaterThan(1);
    expect(power(700)).toBeLessThan(1.1);
  });

  it('has grown by half a kilowatt a liter at 5000 rpm', () => expect(power(5000) - 1).toBeCloseTo(0.5 * 4.3, 9));
});
