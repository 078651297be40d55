import { describe, expect, it } from 'vitest';
import { cell, drain, slow, type Cell, type Pure } from '../../src/graph/cell.ts';
import { verdict } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';
import { snapshot } from '../../src/graph/snapshot.ts';
import { shareSteps, spreads } from '../../src/graph/spread.ts';
import { ratio } from '../../src/units/quantity.ts';
import { HandRunner } from './hand-runner.ts';
import { toy, typed } from './toy.ts';

const seen = (...cells: Cell[]): Live => {
  const live = new Live(cells);
  live.look(cells);
  live.run();
  return live;
};
const a = typed('a', 4);
const b = typed('b', -2);
const c = typed('c', 7);
const line = cell({ ...toy('line'), from: { a, b, c }, compute: ({ a, b, c }) => 3 * a - 2 * b + c });
const product = cell({ ...toy('product'), from: { a, b }, compute: ({ a, b }) => a * b });
const told = (read: Cell, tolerances: readonly (readonly [Cell, number])[], live = seen(read)) => {
  const { plusMinus, shares } = spreads(snapshot(live), [read], new Map(tolerances)).get(read)!;
  return { plusMinus, shares: shares.map((s) => [s.cell.id, s.tolerance, s.change]) };
};

// The rule judged here is the root of the sum of squares of slope times tolerance: JCGM 100:2008 (GUM), eq. 10, and
// its product form, eq. 12 (both from memory).
describe('the ± of a result', () => {
  it('of a straight line is the root of the sum of squares of slope times tolerance, largest share first', () => {
    expect(
      told(line, [
        [c, 0.5],
        [a, 0.1],
        [b, 0.2],
      ]),
    ).toEqual({
      plusMinus: expect.closeTo(Math.sqrt(0.3 ** 2 + 0.4 ** 2 + 0.5 ** 2), 12),
      shares: [
        ['c', 0.5, expect.closeTo(0.5, 12)],
        ['b', 0.2, expect.closeTo(0.4, 12)],
        ['a', 0.1, expect.closeTo(0.3, 12)],
      ],
    });
  });

  it('of a product has the relative tolerances adding up so', () => {
    const { plusMinus } = told(product, [
      [a, 0.04],
      [b, 0.06],
    ]);
    expect(plusMinus / 8).toBeCloseTo(Math.hypot(0.04 / 4, 0.06 / 2), 12);
  });

  it('of a square is twice as large, relatively', () => {
    const square = cell({ ...toy('square'), from: { a }, compute: ({ a }) => a * a });
    expect(told(square, [[a, 0.04]]).plusMinus / 16).toBeCloseTo(2 * 0.01, 12);
  });

  it('takes a held cell with its own tolerance, and what it hides not at all', () => {
    const half = cell({ ...toy('half'), from: { a }, compute: ({ a }) => a / 2 });
    const sum = cell({ ...toy('sum'), from: { half, b }, compute: ({ half, b }) => 10 * half + b });
    const tolerances = [
      [half, 0.3],
      [a, 0.2],
      [b, 4],
    ] as const;
    expect(told(sum, tolerances).shares).toEqual([
      ['b', 4, expect.closeTo(4, 12)],
      ['a', 0.2, expect.closeTo(1, 12)],
    ]);
    const live = seen(sum);
    live.hold(half, 5);
    live.run();
    expect(told(sum, tolerances, live)).toEqual({
      plusMinus: expect.closeTo(5, 12),
      shares: [
        ['b', 4, expect.closeTo(4, 12)],
        ['half', 0.3, expect.closeTo(3, 12)],
      ],
    });
  });

  it('of an input is its own tolerance', () => {
    expect(told(a, [[a, 0.1]]).plusMinus).toBeCloseTo(0.1, 12);
  });

  it('leaves out what the result does not stand on, what does not move it, and what has no tolerance', () => {
    const flat = cell({ ...toy('flat'), from: { a, b, c }, compute: ({ a, c }) => a + c });
    expect(
      told(flat, [
        [a, 0],
        [b, 0.1],
        [c, -1],
        [typed('elsewhere', 1), 0.1],
      ]),
    ).toEqual({ plusMinus: 0, shares: [] });
  });

  it('is one-sided where the other end has no answer', () => {
    const edge = typed('edge', 10, { hard: [0, 10] });
    const square = cell({ ...toy('square'), from: { edge }, compute: ({ edge }) => edge * edge });
    expect(told(square, [[edge, 1]]).plusMinus).toBeCloseTo(100 - 81, 10);
    const from = typed('from', 0, { hard: [0, 10] });
    const cube = cell({ ...toy('cube'), from: { from }, compute: ({ from }) => (from + 1) ** 3 });
    expect(told(cube, [[from, 1]]).plusMinus).toBeCloseTo(8 - 1, 10);
  });

  it('of a verdict is that of the figure it judges', () => {
    const judged = cell({
      ...toy('judged'),
      kind: verdict(ratio, [{ id: 'fine', label: 'fine', tone: 'comfortable' }]),
      from: { a },
      compute: ({ a }) => ({ word: 'fine', value: 3 * a, edges: [], lead: [], place: [], advice: [] }),
    });
    expect(told(judged, [[a, 0.1]]).plusMinus).toBeCloseTo(0.3, 12);
  });

  it('leaves live values alone', () => {
    const live = seen(line);
    told(line, [[a, 0.1]], live);
    expect(live.run()).toEqual([]);
    expect(live.state(line)).toEqual({ is: 'ready', value: 23 });
  });

  it('is not given for what waits, nor for what stands on slow work', () => {
    const work = slow({
      ...toy('work'),
      from: { c },
      *steps({ c }) {
        yield 0.5;
        return c;
      },
    });
    const mixed: Pure<number> = cell({ ...toy('mixed'), from: { work, a }, compute: ({ work, a }) => work + a });
    const live = new Live([mixed], { runner: new HandRunner() });
    live.look([mixed]);
    live.run();
    expect(spreads(snapshot(live), [mixed], new Map([[a as Cell, 0.1]])).has(mixed)).toBe(false);
    const settled = seen(mixed);
    expect(settled.state(mixed).is).toBe('ready');
    expect(spreads(snapshot(settled), [mixed], new Map([[a as Cell, 0.1]])).has(mixed)).toBe(false);
  });
});

describe('the shares of one result, one after another', () => {
  const tolerances = new Map<Cell, number>([
    [c, 0.5],
    [a, 0.1],
    [b, 0.2],
  ]);
  it('are those that are found for all results together', () => {
    const at = snapshot(seen(line, product));
    for (const read of [line, product])
      expect(drain(shareSteps(at, read, tolerances))).toEqual(
        spreads(at, [read], tolerances)
          .get(read)!
          .shares.map((s) => ({ ...s, change: expect.closeTo(s.change, 12) })),
      );
  });
  it('come one by one, largest first, with the share of the work that is done', () => {
    const steps = [...shareSteps(snapshot(seen(line)), line, tolerances)];
    const dones = steps.map((step) => (typeof step === 'number' ? step : step.done));
    expect(dones).toEqual(Array.from({ length: 7 }, (_, i) => expect.closeTo((i + 1) / 7, 12)));
    const told = steps.filter((step) => typeof step !== 'number').map(({ value }) => value.map((s) => s.cell.id));
    expect(told).toEqual([['c'], ['c', 'a'], ['c', 'b', 'a']]);
  });
  it('are found of slow work too, coarsely, each end once', () => {
    let runs = 0;
    const work = slow({
      ...toy('work'),
      from: { a, c },
      *steps({ c }) {
        yield 0.5;
        return c;
      },
      rough: ({ a, c }) => {
        runs++;
        return c + a * a;
      },
    });
    const after = cell({ ...toy('after'), from: { work, b }, compute: ({ work, b }) => 2 * work + b });
    const found = drain(shareSteps(snapshot(seen(after)), after, tolerances));
    expect(found).toEqual([
      { cell: a, tolerance: 0.1, change: expect.closeTo((2 * (4.1 ** 2 - 3.9 ** 2)) / 2, 12) },
      { cell: c, tolerance: 0.5, change: expect.closeTo(1, 12) },
      { cell: b, tolerance: 0.2, change: expect.closeTo(0.2, 12) },
    ]);
    expect(runs).toBeLessThanOrEqual(2 * 3 + 1);
  });
  it('are one-sided where an end has no answer, and none where nothing bears on it', () => {
    const edge = typed('edge', 10, { hard: [0, 10] });
    const square = cell({ ...toy('square'), from: { edge }, compute: ({ edge }) => edge * edge });
    const at = snapshot(seen(square, line));
    expect(drain(shareSteps(at, square, new Map([[edge, 1]])))[0]!.change).toBeCloseTo(100 - 81, 10);
    expect(drain(shareSteps(at, line, new Map([[edge, 1]])))).toEqual([]);
  });
});
