import { describe, expect, it } from 'vitest';
import {
  bankPhases,
  crossPlanePhases,
  cycleDegrees,
  evenPhases,
  Neighbors,
} from '../../../src/physics/cycle/neighbors.ts';

describe('the other cylinders', () => {
  it('of an even four follow at half turns', () =>
    expect(evenPhases(4)).toEqual([
      { delay: 180, weight: 1 },
      { delay: 360, weight: 1 },
      { delay: 540, weight: 1 },
    ]));

  it('of a single are none', () => expect(new Neighbors(evenPhases(1)).count).toBe(0));

  it('of a cross-plane bank are the mean of what its four see, firing 90, 180, 270 and 180 degrees apart', () => {
    const fires = [0, 90, 270, 540];
    const seen = new Map<number, number>();
    for (const me of fires)
      for (const other of fires) {
        if (other === me) continue;
        const delay = (other - me + cycleDegrees) % cycleDegrees; // that far behind: what I did so long ago
        seen.set(delay, (seen.get(delay) ?? 0) + 1 / 4);
      }
    expect(Object.fromEntries(crossPlanePhases.map((phase) => [phase.delay, phase.weight]))).toEqual(
      Object.fromEntries(seen),
    );
  });
});

describe('a bank between a cross plane and an evenly firing one', () => {
  const weights = (even: number): Readonly<Record<number, number>> =>
    Object.fromEntries(bankPhases(even).map((phase) => [phase.delay, phase.weight]));

  it('is at its ends the one and the other', () => {
    expect(bankPhases(0)).toEqual(crossPlanePhases);
    expect(weights(1)).toEqual({ 180: 1, 360: 1, 540: 1 });
  });

  it('between them weighs both, three other cylinders in all', () => {
    expect(weights(0.5)).toEqual({ 90: 1 / 8, 180: 3 / 4, 270: 3 / 8, 360: 1 / 2, 450: 3 / 8, 540: 3 / 4, 630: 1 / 8 });
    for (const even of [0, 0.3, 0.9, 1]) expect(new Neighbors(bankPhases(even)).count).toBeCloseTo(3, 12);
  });
});

describe('their records', () => {
  it('of a steady flow give that flow once for each', () => {
    const neighbors = new Neighbors(evenPhases(6));
    neighbors.fill(1, 2, 3, 4, 5);
    neighbors.enter(77);
    const { drawn, mass, energy, burnt, pressure } = neighbors;
    [drawn, mass, energy, burnt, pressure].forEach((sum, i) => expect(sum).toBeCloseTo(5 * (i + 1), 12));
  });

  it('bring a puff back after each delay, none of it lost', () => {
    const neighbors = new Neighbors(evenPhases(3));
    const came = new Float64Array(cycleDegrees);
    for (let cycle = 0; cycle < 30; cycle++)
      for (let degree = 0; degree < cycleDegrees; degree++) {
        neighbors.enter(degree);
        came[degree] = neighbors.mass;
        if (degree === 400) neighbors.ownMass += 1;
        neighbors.leave();
      }
    const around = (degree: number): number => came[degree - 1]! + came[degree]! + came[degree + 1]!;
    expect(around(400 + 240)).toBeCloseTo(1, 12);
    expect(around(400 + 480 - 720)).toBeCloseTo(1, 12);
    expect(came.reduce((sum, mass) => sum + mass)).toBeCloseTo(2, 12);
  });

  it('are the same after they were written and read', () => {
    const one = new Neighbors(evenPhases(5));
    one.fill(1, 2, 3, 4, 5);
    one.enter(10);
    one.ownEnergy = 9;
    one.leave();
    const numbers = new Float64Array(one.size + 3);
    expect(one.write(numbers, 3)).toBe(numbers.length);
    const other = new Neighbors(evenPhases(5));
    expect(other.read(numbers, 3)).toBe(numbers.length);
    for (const each of [one, other]) each.enter(10 + 144);
    expect(other.energy).toBe(one.energy);
    expect(other.energy).toBeGreaterThan(12);
  });
});
