import { describe, expect, it } from 'vitest';
import { chapters } from '../../cells/index.ts';
import type { Pure, Slow } from '../../src/graph/cell.ts';
import type { Curve, Rows } from '../../src/graph/kind.ts';
import type { Store } from '../../src/notebook/store.ts';
import type { BySpeed } from '../../cells/output/rows.ts';
import type { SparkTrial } from '../../src/physics/cycle/spark-trial.ts';
import * as u from '../../src/units/unit.ts';
import { cellOf, figureOf, inputOf, opened, scenario, valueOf } from '../notebook/notebooks.ts';
import { read, rough } from './roughly.ts';

const degree = u.si(1, u.degree);
const rpm = u.si(1, u.revolutionsPerMinute);
const looked = [
  'suggestedSpark',
  'suggestedSparkCurve',
  'bestSparkCurve',
  'knockLimitedSparkCurve',
  'octaneRequirementCurve',
].map(cellOf);
const few = [
  [inputOf('curveFrom'), 1500 * rpm],
  [inputOf('curveTo'), 4500 * rpm],
  [inputOf('curveStep'), 1500 * rpm],
] as const;

/** A starting point on a fuel, its curve of three speeds worked out to the end. */
function finished(name: string, fuelGrade: string): Store {
  const store = opened(scenario(name), undefined, []);
  store.set([...few, [inputOf('fuelGrade'), fuelGrade]], { what: 'few speeds' });
  store.watch(looked, () => {});
  return store;
}
const rowsOf = (store: Store): Rows => (valueOf(store, 'suggestedSpark') as { readonly rows: Rows }).rows;
const write = chapters.find((c) => c.id === 'spark')!.actions!.find((a) => a.id === 'write-spark-table')!;

describe.each([
  ['edge-of-premium', '87'],
  ['milled-four', '85'],
])('the suggested spark of %s on %s', (name, grade) => {
  const store = finished(name, grade);
  const before = rowsOf(store);
  const curves = ['suggestedSparkCurve', 'bestSparkCurve', 'knockLimitedSparkCurve'].map(
    (id) => valueOf(store, id) as Curve,
  ) as [Curve, Curve, Curve];

  it('is in whole degrees, a row for each speed, never over the best nor over what the fuel bears', () => {
    const [suggested, best, limit] = curves;
    expect(before.map(([speed]) => Math.round(speed! / rpm))).toEqual([1500, 3000, 4500]);
    before.forEach(([, advance], i) => {
      expect(Math.abs(advance! / degree - Math.round(advance! / degree))).toBeLessThan(1e-9);
      const least = Math.min(best.y[i]!, limit.y[i]!);
      expect(suggested.y[i]).toBeCloseTo(least, 12);
      expect(advance!).toBeLessThanOrEqual(least + 1e-6 * degree);
      expect(advance!).toBeGreaterThan(least - degree);
    });
    // The fuel holds it back at the lowest speed, and not at the highest.
    expect(limit.y[0]).toBeLessThan(best.y[0]! - degree);
    expect(limit.y[2]).toBeGreaterThan(best.y[2]!);
  });

  it('once written asks for no more than the fuel has, and suggests hardly more when asked again', () => {
    const given = { suggestedSpark: valueOf(store, 'suggestedSpark') };
    expect(Object.keys(write.from)).toEqual(['suggestedSpark']);
    expect(write.solves(given as never)).toBe(null);
    store.set(write.sets(given as never, 0), { what: 'Write this table' });
    expect(valueOf(store, 'sparkEntry')).toBe('table');
    expect(valueOf(store, 'sparkAdvance')).toEqual(before);
    const fuel = figureOf(store, 'pumpOctane');
    for (const asked of (valueOf(store, 'octaneRequirementCurve') as Curve).y) expect(asked).toBeLessThan(fuel + 0.2);
    rowsOf(store).forEach(([, advance], i) =>
      expect(advance! / degree).toBeLessThan(before[i]![1]! / degree + 1 + 1e-6),
    );
    expect(store.canUndo).toBe('Write this table');
    store.undo();
    expect(valueOf(store, 'sparkEntry')).toBe('total');
    expect(valueOf(store, 'sparkAdvance')).toEqual([]);
  });
});

it('no table is suggested from a first look, nor where some speed bears no spark at all', () => {
  const found = (rows: readonly object[]): (() => unknown) => {
    const cell = cellOf('suggestedSpark') as Pure;
    return () => cell.compute({ engineBySpeed: { rows }, pumpOctane: 91 } as never);
  };
  const sparks = [0, 10, 20, 30].map((at): SparkTrial => ({ advance: at * degree, torque: 300, octane: 80 + at }));
  const row = { speed: 300, settled: true, fine: true, bestSpark: 25 * degree, sparks };
  const knocking = { ...row, speed: 200, sparks: sparks.map((s) => ({ ...s, octane: s.octane + 20 })) };
  const suggested = { rows: [[300, expect.closeTo(11 * degree, 12)]], without: [] }; // 91 − 80 degrees
  expect(found([row])()).toEqual(suggested);
  expect(found([{ ...row, fine: false }])).toThrow(/not finished/);
  expect(found([{ ...row, settled: false }])).toThrow(/does the cycle settle/);
  const lacking = found([knocking, row])();
  expect(lacking).toEqual({ ...suggested, without: [200] });
  expect(() => write.sets({ suggestedSpark: lacking } as never, NaN)).toThrow(/bears no spark in reach/);
  const live = rough({ curveFrom: 3000 * rpm, curveTo: 4000 * rpm, curveStep: 1000 * rpm });
  live.look([cellOf('suggestedSpark')]);
  live.run();
  expect(live.state(cellOf('suggestedSpark')).is).toBe('fault'); // a sweep's quick look writes none either
});

it('the limit is left out of its curve where no spark is borne, and the rest stays at its speed', () => {
  const cell = cellOf('knockLimitedSparkCurve') as Pure<Curve>;
  const sparks = (octane: number): readonly SparkTrial[] =>
    [10, 20].map((at) => ({ advance: at * degree, torque: 300, octane: octane + at }));
  const rows = [
    { speed: 100, sparks: sparks(90) },
    { speed: 200, sparks: sparks(75) },
  ];
  const { x, y } = cell.compute({ engineBySpeed: { rows }, pumpOctane: 91 } as never);
  expect([...x]).toEqual([200]);
  expect(y[0]! / degree).toBeCloseTo(16, 9); // 75 + 16 = 91
});

it('at the engine speed the trials have the spark it runs, its best and its limit among them', () => {
  const live = rough({ engineSpeed: 2500 * rpm, fuelGrade: '87' });
  const [trials, best, limit, torque] = read(
    live,
    'sparkTrials',
    'bestSparkAtSpeed',
    'knockLimitAtSpeed',
    'torqueAtSpeed',
  ) as [
    { readonly trials: readonly SparkTrial[]; readonly spark: number; readonly octane: number },
    number,
    number,
    number,
  ];
  const advances = trials.trials.map((t) => t.advance / degree);
  expect(advances).toEqual(advances.toSorted((a, b) => a - b));
  const run = trials.trials.find((t) => Math.abs(t.advance - trials.spark) < 1e-9)!;
  expect(run.torque / torque).toBeCloseTo(1, 9);
  expect(trials.octane).toBe(87);
  expect(best / degree).toBeGreaterThan(20); // common practice: 26 to 34 in all at this speed
  expect(best / degree).toBeLessThan(36);
  const [under, over] = [advances.findLast((a) => a * degree <= limit)!, advances.find((a) => a * degree > limit)!];
  const octaneAt = (a: number): number => trials.trials[advances.indexOf(a)]!.octane;
  expect(octaneAt(under)).toBeLessThanOrEqual(87);
  expect(octaneAt(over)).toBeGreaterThan(87);
});

it('the curve keeps little of each speed: what is posted stays under two kilobytes', () => {
  const cell = cellOf('engineBySpeed') as Slow<BySpeed>;
  const store = opened(scenario('edge-of-premium'));
  const given = Object.fromEntries(
    Object.entries(cell.from).map(([name, source]) => [name, valueOf(store, source.id)]),
  );
  const span = Object.fromEntries(few.map(([input, value]) => [input.id, value]));
  for (const row of cell.rough!({ ...given, ...span } as never).rows)
    expect(JSON.stringify(row).length).toBeLessThan(2000);
});
