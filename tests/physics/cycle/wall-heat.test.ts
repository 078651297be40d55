import { describe, expect, it } from 'vitest';
import {
  closedSpeed,
  combustionSpeed,
  gasExchangeSpeed,
  unfiredPressure,
  wallArea,
  woschni,
} from '../../../src/physics/cycle/wall-heat.ts';
import { bore, closedCycle, ordinary, stroke, volumeAt } from './closed-cylinder.ts';

describe('woschni', () => {
  it('is a Nusselt number to the 0.8 of the Reynolds number: size alone counts to the -0.2', () => {
    // SAE 670931: with density as p/T and the pair speed and bore in one number
    const h = woschni(0.1, 30e5, 1500, 20);
    expect(woschni(0.2, 30e5, 1500, 20) / h).toBeCloseTo(2 ** -0.2, 12);
    expect(woschni(0.1, 60e5, 1500, 10) / h).toBeCloseTo(1, 12);
  });
});

describe('gas speed', () => {
  it('is greatest while valves are open, 6.18 of the piston’s against 2.28 (Heywood, 1988, eq. 12.19)', () => {
    expect(gasExchangeSpeed(10)).toBeCloseTo(61.8, 12);
    expect(closedSpeed(10)).toBeCloseTo(22.8, 12);
  });

  it('gains nothing from a fire that has not raised the pressure', () => {
    expect(combustionSpeed(5e-4, 5, -1e5)).toBe(0);
    expect(combustionSpeed(5e-4, 5, 1e5)).toBeGreaterThan(0);
  });
});

describe('unfiredPressure', () => {
  it('is within 5 % of what a compression of the same charge against ordinary walls comes to', () => {
    const { peak } = closedCycle({ ...ordinary, spark: null });
    const guessed = unfiredPressure(1e5, volumeAt(ordinary.ratio, -120) / volumeAt(ordinary.ratio, 0));
    expect(Math.abs(guessed / peak - 1)).toBeLessThan(0.05);
  });
});

describe('wallArea', () => {
  it('is at the bottom the liner and a tenth more than two flat ends', () =>
    expect(wallArea(bore, stroke)).toBeCloseTo(Math.PI * bore * stroke + 2.2 * (Math.PI / 4) * bore ** 2, 12));
});

describe('heat into the walls of a closed cylinder', () => {
  it('is 5 to 22 % of the fuel’s, and less at higher speed (Heywood, 1988, sec. 12.5, from memory: 12 to 20 whole)', () => {
    const shares = [1000, 2000, 4000, 6000].map((speed) => closedCycle({ ...ordinary, speed, spark: 28 }).heatShare);
    expect(shares).toEqual(shares.toSorted((a, b) => b - a));
    expect(shares[0]).toBeLessThan(0.22);
    expect(shares[1]).toBeLessThan(0.15);
    expect(shares[2]).toBeGreaterThan(0.05);
  });
});
