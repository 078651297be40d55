import { describe, expect, it } from 'vitest';
import { read } from '../../src/formula/read.ts';
import { sameDimension } from '../../src/units/dimension.ts';
import * as quantities from '../../src/units/quantity.ts';
import { airPressure, dimensionOf, gaugePressure, type Quantity, quantityNamed } from '../../src/units/quantity.ts';
import { fromUnit, psi, psiAbsolute, psiGauge } from '../../src/units/unit.ts';

const all = Object.entries(quantities).filter((entry): entry is [string, Quantity] => typeof entry[1] === 'object');

describe('every quantity', () => {
  it.each(all)('%s is one thing in both systems', (name, quantity) => {
    expect(sameDimension(quantity.us.unit.dimension, quantity.si.unit.dimension)).toBe(true);
    expect(dimensionOf(quantity)).toBe(quantity.us.unit.dimension);
    expect(quantity.id).toBe(name);
    expect(quantityNamed(name)).toBe(quantity);
  });

  it.each(all)('%s shows digits that its steps can be seen in', (_, { us, si }) => {
    for (const { digits, step } of [us, si]) {
      expect(Number.isInteger(digits) && digits >= 0 && digits <= 6).toBe(true);
      expect(step).toBeGreaterThanOrEqual(10 ** -digits * (1 - 1e-12));
    }
  });

  it('has a name of its own, and an unknown one is an error', () => {
    expect(new Set(all.map(([, { id }]) => id)).size).toBe(all.length);
    expect(() => quantityNamed('enthusiasm')).toThrow('no quantity is called "enthusiasm"');
  });
});

describe('gauge and absolute pressure', () => {
  it('are marked on quantities, and only on pressures', () => {
    const marked = all.filter(([, { datum }]) => datum !== null);
    for (const [name, quantity] of marked) expect(sameDimension(dimensionOf(quantity), psi.dimension), name).toBe(true);
    const pressures = all.filter(([, quantity]) => sameDimension(dimensionOf(quantity), psi.dimension));
    expect(marked.map(([name]) => name)).toEqual(pressures.map(([name]) => name));
  });

  it('are the same unit counted from another zero, which no conversion adds', () => {
    for (const unit of [psiGauge, psiAbsolute]) expect(fromUnit(30, unit)).toBe(fromUnit(30, psi));
    expect([psi.datum, psiGauge.datum, psiAbsolute.datum]).toEqual([null, 'gauge', 'absolute']);
  });

  it('are not taken for one another in a field, and a plain psi fits both', () => {
    const taken = (text: string, quantity: Quantity) => 'si' in read(text, quantity, quantity.us);
    expect(taken('180 psig', gaugePressure)).toBe(true);
    expect(taken('180 psi', gaugePressure)).toBe(true);
    expect(taken('180 psia', gaugePressure)).toBe(false);
    expect(taken('14.7 psia', airPressure)).toBe(true);
    expect(taken('14.7 psi', airPressure)).toBe(true);
    expect(taken('14.7 psig', airPressure)).toBe(false);
  });
});
