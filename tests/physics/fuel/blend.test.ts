import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blendOctane, ethanolMoleFraction } from '../../../src/physics/fuel/blend.ts';
import { density, heatingValue, latentHeat } from '../../../src/physics/fuel/properties.ts';
import { blendStoichiometricRatio, stoichiometricRatio } from '../../../src/physics/fuel/stoichiometry.ts';

const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });

describe('ethanol in gasoline', () => {
  it('counts for more by mole than by volume, since its molecules are light', () => {
    fc.assert(
      fc.property(share, (volume) => {
        expect(ethanolMoleFraction(volume)).toBeGreaterThan(volume);
      }),
    );
  });

  it('leaves the neat liquids as they are', () => {
    expect(ethanolMoleFraction(0)).toBe(0);
    expect(ethanolMoleFraction(1)).toBe(1);
    expect(blendOctane(0, 88, 109, 10)).toBe(88);
    expect(blendOctane(1, 88, 109, 10)).toBe(109);
    expect(blendStoichiometricRatio(0)).toBe(stoichiometricRatio(1.87, 0));
    expect(blendStoichiometricRatio(1)).toBe(stoichiometricRatio(3, 0.5));
  });

  it('needs less air, gives less heat, weighs more and cools more with every drop', () => {
    fc.assert(
      fc.property(share, (volume) => {
        const more = volume + 0.0005;
        expect(blendStoichiometricRatio(more)).toBeLessThan(blendStoichiometricRatio(volume));
        expect(heatingValue(more)).toBeLessThan(heatingValue(volume));
        expect(density(more)).toBeGreaterThan(density(volume));
        expect(latentHeat(more)).toBeGreaterThan(latentHeat(volume));
      }),
    );
  });

  it('keeps the energy of a tankful: the parts burned apart give what the blend gives', () => {
    fc.assert(
      fc.property(share, (volume) => {
        const apart = (1 - volume) * density(0) * heatingValue(0) + volume * density(1) * heatingValue(1);
        expect((density(volume) * heatingValue(volume)) / apart).toBeCloseTo(1, 9);
      }),
    );
  });

  it('blends better than the straight line when the interaction is positive', () => {
    fc.assert(
      fc.property(share, (x) => {
        expect(blendOctane(x, 88, 109, 10)).toBeGreaterThan(blendOctane(x, 88, 109));
      }),
    );
  });

  it.each([-0.01, 1.01, Number.NaN])('cannot have a share of %f', (wrong) => {
    for (const ask of [ethanolMoleFraction, blendStoichiometricRatio, heatingValue, density, latentHeat]) {
      expect(() => ask(wrong)).toThrow(RangeError);
    }
    expect(() => blendOctane(wrong, 88, 109)).toThrow(RangeError);
  });

  it('needs liquids with a density and a molar mass', () => {
    expect(() => ethanolMoleFraction(0.1, { ethanolDensity: 0 })).toThrow(RangeError);
    expect(() => ethanolMoleFraction(0.1, { gasolineDensity: -1 })).toThrow(RangeError);
    expect(() => ethanolMoleFraction(0.1, { gasolineMolarMass: 0 })).toThrow(RangeError);
  });
});

describe('stoichiometric ratio', () => {
  it('is refused for a fuel that needs no air and for negative atom counts', () => {
    expect(() => stoichiometricRatio(0, 2)).toThrow(/all the oxygen/); // carbon dioxide
    expect(() => stoichiometricRatio(-1, 0)).toThrow(/negative/);
    expect(() => stoichiometricRatio(2, -1)).toThrow(/negative/);
  });
});
