import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flowFunction, flowTable, orificeFlow } from '../../../../src/physics/cycle/pipe/orifice.ts';
import { densityRatio, powerTables, stagnationRatio } from '../../../../src/physics/cycle/pipe/powers.ts';
import { orificePsi } from './closed-forms.ts';

const gammas = [1.25, 1.29, 1.37, 1.4, 1.66];
const between = (low: number, high: number, count: number): number[] =>
  Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));

/** The largest share by which two functions differ at some places. */
const apart = (at: readonly number[], found: (x: number) => number, exact: (x: number) => number): number =>
  Math.max(...at.map((x) => Math.abs(found(x) / exact(x) - 1)));

describe('the tables', () => {
  it('of the flow function are within 2e-6 of the closed formula, next to no flow too', () => {
    for (const gamma of gammas) {
      const table = flowTable(gamma);
      const at = [...between(0.3, 0.9999, 20_011), ...between(0.9999, 1 - 1e-9, 1000)];
      expect(
        apart(
          at,
          (x) => flowFunction(table, x),
          (x) => orificePsi(x, gamma),
        ),
      ).toBeLessThan(2e-6);
    }
  });

  it('of density and stagnation pressure are within 2e-6 of the powers', () => {
    for (const gamma of gammas) {
      const powers = powerTables(gamma);
      const stagnation = (square: number): number => (1 + 0.5 * (gamma - 1) * square) ** (gamma / (gamma - 1));
      expect(
        apart(
          between(0.05, 6, 20_011),
          (x) => densityRatio(powers, x),
          (x) => x ** (1 / gamma),
        ),
      ).toBeLessThan(2e-6);
      expect(apart(between(0, 1, 20_011), (x) => stagnationRatio(powers, x), stagnation)).toBeLessThan(2e-6);
    }
  });

  it('are made once for a gas', () => {
    expect(flowTable(1.31)).toBe(flowTable(1.31));
    expect(powerTables(1.31)).toBe(powerTables(1.31));
  });
});

describe('the flow function', () => {
  it('is 0 without a fall of pressure and the same at any pressure under the critical one', () => {
    const table = flowTable(1.4);
    expect(flowFunction(table, 1)).toBe(0);
    expect(flowFunction(table, 1.5)).toBe(0);
    const choked = flowFunction(table, table.critical);
    expect([0, 0.1, 0.5].map((ratio) => flowFunction(table, ratio))).toEqual([choked, choked, choked]);
  });

  it('never rises with the pressure ratio', () => {
    const table = flowTable(1.33);
    const ratio = fc.double({ min: 0, max: 1.1, noNaN: true });
    fc.assert(
      fc.property(ratio, ratio, (one, other) => {
        const [low, high] = one < other ? [one, other] : [other, one];
        expect(flowFunction(table, high)).toBeLessThanOrEqual(flowFunction(table, low));
      }),
      { numRuns: 2000, seed: 20260904 },
    );
  });
});

it('an orifice passes the same the other way round, with the other sign', () => {
  const table = flowTable(1.4);
  const there = orificeFlow(table, 287, 1.2e5, 350, 0.9e5, 300, 1e-4);
  expect(there).toBeGreaterThan(0);
  expect(orificeFlow(table, 287, 0.9e5, 300, 1.2e5, 350, 1e-4)).toBe(-there);
  expect(orificeFlow(table, 287, 1e5, 350, 1e5, 300, 1e-4)).toBeCloseTo(0, 15);
});
