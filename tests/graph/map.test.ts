import { describe, expect, it } from 'vitest';
import { cell, drain, shareOf, slow, type Cell } from '../../src/graph/cell.ts';
import { verdict } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';
import { coarselyFirstOver, gridsOf, type MapAsk, type MapResult, mapSteps, takeOf } from '../../src/graph/map.ts';
import { NotSettled, snapshot, type Snapshot } from '../../src/graph/snapshot.ts';
import { Impossible } from '../../src/graph/state.ts';
import { ratio } from '../../src/units/quantity.ts';
import { toy, typed } from './toy.ts';

const at = (...cells: Cell[]): Snapshot => {
  const live = new Live(cells);
  live.look(cells);
  live.run();
  return snapshot(live);
};
const mapped = (from: Snapshot, ask: MapAsk): number[][] =>
  drain(mapSteps(from, ask)).rows.map((values) => Array.from(values));

const x = typed('x', 1, { hard: [-100, 100] });
const y = typed('y', 2);
const c = typed('c', 5);
const sum = cell({ ...toy('sum'), from: { x, y, c }, compute: (g) => g.x + 10 * g.y + 100 * g.c });
const quotient = cell({
  ...toy('quotient'),
  from: { x, y },
  compute: (g) => {
    if (g.x === g.y) throw new Impossible(['Not where they are the same.']);
    return 1 / (g.x - g.y);
  },
});
const over = (xs: number[], ys: number[]): Pick<MapAsk, 'x' | 'y'> => ({
  x: { vary: x, values: xs },
  y: { vary: y, values: ys },
});

describe('a map', () => {
  it('has for each result the values row by row, x running within a row', () => {
    expect(mapped(at(sum), { ...over([1, 2, 3], [4, 6]), read: [sum, x] })).toEqual([
      [541, 542, 543, 561, 562, 563],
      [1, 2, 3, 1, 2, 3],
    ]);
  });
  it('keeps what is fixed at its own value', () => {
    const fixed = [{ cell: c, value: 0 }];
    expect(mapped(at(sum), { ...over([1, 2], [0, 1]), fixed, read: [sum] })).toEqual([[1, 2, 11, 12]]);
  });
  it('has gaps where there is no answer, and goes on behind them', () => {
    expect(mapped(at(quotient, sum), { ...over([1, 2, 101], [1, 2]), read: [quotient, sum] })).toEqual([
      [NaN, 1, NaN, -1, NaN, NaN],
      [511, 512, NaN, 521, 522, NaN],
    ]);
  });
  it('takes an edge of a verdict, and no value where it has none of that number', () => {
    const judged = cell({
      ...toy('judged'),
      kind: verdict(ratio, [{ id: 'fine', label: 'fine', tone: 'comfortable' }]),
      from: { x, y },
      compute: (g) => ({ word: 'fine', value: g.x, edges: [g.y, 2 * g.y], lead: [], place: [], advice: [] }),
    });
    const read = [{}, { edge: 1 }, { edge: 2 }];
    const ask = { ...over([1, 2], [3, 4]), read: read.map(() => judged), take: read.map(takeOf) };
    expect(mapped(at(judged), ask)).toEqual([
      [1, 2, 1, 2],
      [6, 6, 8, 8],
      [NaN, NaN, NaN, NaN],
    ]);
  });
  it.each([
    ['across', true, [0, 1, 2], [3, 4]],
    ['up', false, [3, 4], [0, 1, 2]],
  ] as const)('moves a cell that can be moved, %s', (_, isAcross, xs, ys) => {
    const late = cell({
      ...toy('late'),
      from: { x, y },
      movedBy: [{ label: 'x', inputs: [x] }],
      compute: (g) => g.y - g.x,
    });
    const all = cell({ ...toy('all'), from: { x, y, late }, compute: (g) => g.x + 10 * g.y + 100 * g.late });
    const [ofLate, ofY] = [
      { vary: late, values: isAcross ? xs : ys },
      { vary: y, values: isAcross ? ys : xs },
    ];
    const [values] = mapped(at(all, late), {
      x: isAcross ? ofLate : ofY,
      y: isAcross ? ofY : ofLate,
      read: [all],
    });
    // x = y − late
    expect(values).toEqual(
      ys.flatMap((v) =>
        xs.map((u) => {
          const [lateness, why] = isAcross ? [u, v] : [v, u];
          return why - lateness + 10 * why + 100 * lateness;
        }),
      ),
    );
  });
  it('of two cells that one input moves cannot be had, and says why', () => {
    const mover = [{ label: 'x', inputs: [x] }];
    const [a, b] = ['a', 'b'].map((id) => cell({ ...toy(id), from: { x }, movedBy: mover, compute: (g) => 2 * g.x }));
    const both = cell({ ...toy('both'), from: { a: a!, b: b! }, compute: (g) => g.a + g.b });
    const ask = { x: { vary: a!, values: [1] }, y: { vary: b!, values: [1] }, read: [both] };
    expect(() => drain(mapSteps(at(both), ask))).toThrow(Impossible);
    expect(() => drain(mapSteps(at(both), { ...ask, x: { vary: x, values: [1] } }))).toThrow(/both move x/);
  });
  it('leaves live values alone, and does not begin before what it reads is settled', () => {
    const live = new Live([sum]);
    live.look([sum]);
    live.run();
    mapped(snapshot(live), { ...over([7], [8]), read: [sum] });
    expect(live.run()).toEqual([]);
    live.fail(c, { at: 'c', about: 'c', message: ['Write a figure.'] });
    live.run();
    expect(() => mapSteps(snapshot(live), { ...over([7], [8]), read: [sum] }).next()).toThrow(NotSettled);
  });
  it('yields after each row, so that it can be run in slices', () => {
    const ys = Array.from({ length: 40 }, (_, i) => i);
    const shares = [...mapSteps(at(sum), { ...over(ys, ys), read: [sum] })].map(shareOf);
    expect(shares).toHaveLength(40);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });
});

describe('a slow map', () => {
  const ran: string[] = [];
  const work = slow({
    ...toy('work'),
    from: { x, y },
    *steps(g) {
      yield 0.5;
      ran.push(`${g.x} ${g.y}`);
      return g.x + 10 * g.y;
    },
  });
  const five = [0, 1, 2, 3, 4];
  const ask = { ...over(five, five), read: [work] };
  const said = (from: MapAsk): MapResult[] =>
    [...mapSteps(at(work), from)].map((step) => {
      if (typeof step === 'number') throw new Error('a share without what stands');
      return step.value;
    });

  it('comes to the same as point by point', () => {
    expect(mapped(at(work), ask)[0]).toEqual(five.flatMap((v) => five.map((u) => u + 10 * v)));
  });
  it('takes the corners first, then grid by grid, and says after each point which stand', () => {
    const seen = said(ask);
    expect(seen).toHaveLength(25);
    seen.forEach(({ rows, stands }, n) => {
      expect(stands.reduce((sum, is) => sum + is, 0)).toBe(n + 1);
      rows[0]!.forEach((value, place) => expect(Number.isNaN(value)).toBe(stands[place] === 0));
    });
    const standing = (n: number): number[] => Array.from(seen[n - 1]!.stands).flatMap((is, k) => (is === 1 ? [k] : []));
    expect(standing(4)).toEqual([0, 4, 20, 24]);
    expect(standing(9)).toEqual([0, 2, 4, 10, 12, 14, 20, 22, 24]);
  });
  it('does not go again where it was before', () => {
    const known = said(ask)[8]!;
    const from = at(work);
    ran.length = 0;
    const steps = mapSteps(from, { ...ask, known });
    const { value: first } = steps.next();
    expect(shareOf(first as number)).toBe(10 / 25);
    const whole = drain(steps);
    expect(ran).toHaveLength(16);
    expect(new Set(ran).size).toBe(16);
    expect(Array.from(whole.rows[0]!)).toEqual(mapped(at(work), ask)[0]);
    expect(known.stands.reduce((sum, is) => sum + is, 0)).toBe(9); // what was known is not written to
  });
});

describe('the grids of a map', () => {
  it('hold one another: of 13 places 2, 4, 7 and all', () => {
    expect(gridsOf(13)).toEqual([12, 4, 2, 1]);
    expect(gridsOf(7)).toEqual([6, 2, 1]);
    expect(gridsOf(17)).toEqual([16, 8, 4, 2, 1]);
    for (const n of [2, 3, 4, 5, 6, 8, 13, 65]) {
      const steps = gridsOf(n);
      expect(steps.at(-1)).toBe(1);
      for (const [i, step] of steps.entries()) {
        expect((n - 1) % step).toBe(0);
        if (i > 0) expect(steps[i - 1]! % step).toBe(0);
      }
    }
  });
  it.each([
    [1, 1],
    [1, 4],
    [7, 3],
    [13, 13],
  ])('leave out none of %i by %i places, and take none twice', (nx, ny) => {
    expect(coarselyFirstOver(nx, ny).toSorted((a, b) => a - b)).toEqual(Array.from({ length: nx * ny }, (_, i) => i));
  });
});
