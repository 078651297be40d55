import { describe, expect, it } from 'vitest';
import { carburetorArea, carburetorDrop } from '../../../src/physics/flow/carburetor.ts';
import { ratedAir } from '../../../src/physics/flow/still-air.ts';
import * as u from '../../../src/units/unit.ts';

const cfm = u.si(1, u.cubicFeetPerMinute);
const mercury = u.si(1, u.inchOfMercury);
const dropOf = (rated: number, at: number, flow: number, air = ratedAir): number | null => {
  const drop = carburetorDrop(carburetorArea(rated * cfm, at * mercury), flow * cfm, air);
  return drop === null ? null : drop / mercury;
};

describe('a carburetor', () => {
  it('drops what it is rated at when its rated flow goes through it', () => {
    expect(dropOf(600, 1.5, 600)).toBeCloseTo(1.5, 9);
    expect(dropOf(300, 3, 300)).toBeCloseTo(3, 9);
  });
  it('rated at 3.0 inHg passes less at 1.5, by the square root of two and a little more', () => {
    // Common practice, no source: 300 cfm at 3.0 counts as 212 at 1.5.
    const drop = dropOf(300, 3, 212)!;
    expect(drop).toBeGreaterThan(1.35);
    expect(drop).toBeLessThan(1.5);
  });
  it('drops less in thin air, in proportion, for the same volume', () => {
    const thin = { pressure: ratedAir.pressure, density: 0.8 * ratedAir.density };
    expect(dropOf(600, 1.5, 100, thin)! / dropOf(600, 1.5, 100)!).toBeCloseTo(0.8, 3);
  });
  it('drops nothing with the engine at rest, and chokes at little over twice its rating: 0.685 over 0.308 by the choked flow and that at 1.5 inHg', () => {
    expect(dropOf(600, 1.5, 0)).toBe(0);
    expect(dropOf(600, 1.5, 1300)).not.toBeNull();
    expect(dropOf(600, 1.5, 1400)).toBeNull();
  });
});
