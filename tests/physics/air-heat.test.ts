import { describe, expect, it } from 'vitest';
import { airGamma, airGasConstant, airInternalEnergy, airSpecificHeat } from '../../src/physics/air-heat.ts';

describe('dry air', () => {
  it('has the gas constant of the standard atmosphere, 287.053 J/kg/K (ISO 2533), but for the gases counted as nitrogen', () =>
    expect(Math.abs(airGasConstant / 287.053 - 1)).toBeLessThan(3e-4));

  it('has an internal energy whose slope is its specific heat', () => {
    for (const T of [220, 300, 450, 700, 990, 1010, 1500, 2500]) {
      const slope = (airInternalEnergy(T + 0.05) - airInternalEnergy(T - 0.05)) / 0.1;
      expect(slope / airSpecificHeat(T)).toBeCloseTo(1, 6);
    }
  });

  it('counts enthalpy from nothing at 298.15 K, as its elements do', () =>
    expect(Math.abs(airInternalEnergy(298.15) + airGasConstant * 298.15)).toBeLessThan(20));

  it('joins its two ranges at 1000 K', () => {
    expect(airSpecificHeat(1000 - 1e-6) / airSpecificHeat(1000)).toBeCloseTo(1, 4);
    expect(airInternalEnergy(1000 - 1e-6) / airInternalEnergy(1000)).toBeCloseTo(1, 4);
  });

  it('stiffens less when hot: gamma falls with temperature', () => {
    const gammas = [300, 500, 800, 1200, 2000].map(airGamma);
    expect(gammas).toEqual(gammas.toSorted((a, b) => b - a));
  });
});
