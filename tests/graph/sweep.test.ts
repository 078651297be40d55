import { describe, expect, it } from 'vitest';
import { cell, drain, input, shareOf, slow, type Cell } from '../../src/graph/cell.ts';
import { choice, optional, scalar, verdict } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';
import { NotSettled, snapshot, type Snapshot } from '../../src/graph/snapshot.ts';
import { Impossible } from '../../src/graph/state.ts';
import { coarselyFirst, type SweepAsk, sweepSteps } from '../../src/graph/sweep.ts';
import { ratio } from '../../src/units/quantity.ts';
import { toy, typed } from './toy.ts';

const at = (...cells: Cell[]): Snapshot => {
  const live = new Live(cells);
  live.look(cells);
  live.run();
  return snapshot(live);
};
const swept = (from: Snapshot, ask: SweepAsk): number[][][] =>
  drain(sweepSteps(from, ask)).map((member) => member.map((line) => [...line]));

const x = typed('x', 1, { hard: [-100, 100] });
const b = typed('b', 3);
const c = typed('c', 5);
const grade = input({
  id: 'grade',
  label: 'Grade',
  note: '',
  kind: choice([
    { id: 'plain', label: 'Plain' },
    { id: 'high', label: 'High' },
  ]),
  initial: 'plain',
});
const line = cell({ ...toy('line'), from: { x, b, c }, compute: ({ x, b, c }) => x * b + c });
const square = cell({ ...toy('square'), from: { x }, compute: ({ x }) => x * x });
const root = cell({
  ...toy('root'),
  from: { x },
  compute: ({ x }) => {
    if (x < 0) throw new Impossible(['No root of less than nothing.']);
    return Math.sqrt(x);
  },
});

describe('a sweep', () => {
  it('gives one line for each result', () => {
    expect(swept(at(line, square), { vary: x, xs: [0, 1, 2.5], read: [line, square] })).toEqual([
      [
        [5, 8, 12.5],
        [0, 1, 6.25],
      ],
    ]);
  });

  it('takes its points as they come, in any order', () => {
    expect(swept(at(square), { vary: x, xs: Float64Array.of(3, -2, 3), read: [square] })).toEqual([[[9, 4, 9]]]);
    expect(swept(at(square), { vary: x, xs: [], read: [square] })).toEqual([[[]]]);
  });

  it('gives one set of lines for each member of a family', () => {
    const family = { vary: b, values: [1, 10] };
    expect(swept(at(line), { vary: x, xs: [1, 2], family, read: [line] })).toEqual([[[6, 7]], [[15, 25]]]);
  });

  it('takes a choice for a family', () => {
    const word = cell({ ...toy('word'), from: { grade, x }, compute: ({ grade, x }) => grade.length * x });
    const family = { vary: grade, values: ['plain', 'high', 'none'] };
    expect(swept(at(word), { vary: x, xs: [1, 2], family, read: [word] })).toEqual([[[5, 10]], [[4, 8]], [[NaN, NaN]]]);
  });

  it('keeps what is fixed at its own value, with a family and without', () => {
    const fixed = [{ cell: c, value: 100 }];
    expect(swept(at(line), { vary: x, xs: [1, 2], fixed, read: [line] })).toEqual([[[103, 106]]]);
    const family = { vary: b, values: [1, 10] };
    expect(swept(at(line), { vary: x, xs: [1, 2], fixed, family, read: [line] })).toEqual([[[101, 102]], [[110, 120]]]);
  });

  it('has a gap where a cell has no answer, and goes on behind it', () => {
    expect(swept(at(root), { vary: x, xs: [4, -1, 9], read: [root] })).toEqual([[[2, NaN, 3]]]);
  });

  it('has no gap in a result that has an answer where another has none', () => {
    expect(swept(at(root, square), { vary: x, xs: [4, -3, 9], read: [root, square] })).toEqual([
      [
        [2, NaN, 3],
        [16, 9, 81],
      ],
    ]);
  });

  it('has a gap outside what physics allows the varied input', () => {
    expect(swept(at(square), { vary: x, xs: [100, 101, -100], read: [square] })).toEqual([[[10000, NaN, 10000]]]);
  });

  it('reads a verdict by its figure, and what is not given as a gap', () => {
    const judged = cell({
      ...toy('judged'),
      kind: verdict(ratio, [{ id: 'fine', label: 'fine', tone: 'comfortable' }]),
      from: { x },
      compute: ({ x }) => ({ word: 'fine', value: 3 * x, edges: [], lead: [], place: [], advice: [] }),
    });
    const given = cell({
      ...toy('given'),
      kind: optional(scalar(ratio)),
      from: { x },
      compute: ({ x }) => (x > 1 ? x : null),
    });
    expect(swept(at(judged, given), { vary: x, xs: [1, 2], read: [judged, given] })).toEqual([
      [
        [3, 6],
        [NaN, 2],
      ],
    ]);
  });

  it('moves a cell that can be moved, so that no line is flat by accident', () => {
    const late = cell({
      ...toy('late'),
      from: { x, b },
      movedBy: [{ label: 'x', inputs: [x] }],
      compute: ({ x, b }) => b - x,
    });
    const early = cell({ ...toy('early'), from: { x }, compute: ({ x }) => 10 * x });
    expect(swept(at(late, early), { vary: late, xs: [0, 1, 4], read: [early, late] })).toEqual([
      [
        [30, 20, -10],
        [0, 1, 4],
      ],
    ]);
    // Gaps of what stands on it, of what only its mover reaches, and out of its mover's reach.
    const over = cell({
      ...toy('over'),
      from: { late },
      compute: ({ late }) => {
        if (late === 3) throw new Impossible(['Not three.']);
        return late;
      },
    });
    const moved = { vary: late, xs: [0, 1, 2, 3, 4, 200, 5], read: [over, root, early] };
    expect(swept(at(over, root, early), moved)).toEqual([
      [
        [0, 1, 2, NaN, 4, NaN, 5],
        [Math.sqrt(3), Math.sqrt(2), 1, 0, NaN, NaN, NaN],
        [30, 20, 10, 0, -10, NaN, -20],
      ],
    ]);
    // A member of the family moves it too: it is brought back.
    const family = { vary: b, values: [3, 5] };
    expect(swept(at(late, early), { vary: late, xs: [0, 1], family, read: [early] })).toEqual([[[30, 20]], [[50, 40]]]);
  });

  it.each([false, true])('feels all that lies on the way of a mover (said to be straight: %s)', (straight) => {
    const middle = cell({ ...toy('middle'), from: { x }, compute: ({ x }) => 2 * x });
    const late = cell({
      ...toy('late'),
      from: { middle },
      movedBy: [{ label: 'x', inputs: [x], straight }],
      compute: ({ middle }) => 5 - middle,
    });
    const all = cell({ ...toy('all'), from: { late, middle, x }, compute: (g) => g.late + 10 * g.middle + 100 * g.x });
    // middle = 5 - late, x = middle / 2
    expect(swept(at(all), { vary: late, xs: [5, 3, 1, -1], read: [all, late, middle, x] })).toEqual([
      [
        [5, 123, 241, 359],
        [5, 3, 1, -1],
        [0, 2, 4, 6],
        [0, 1, 2, 3],
      ],
    ]);
  });

  it('minds the family and what is fixed while it moves a cell', () => {
    const limited = typed('limited', 1, { hard: [0, 10] });
    const late = cell({
      ...toy('late'),
      from: { x },
      movedBy: [{ label: 'x', inputs: [x] }],
      compute: ({ x }) => 5 - x,
    });
    const beside = cell({ ...toy('beside'), from: { limited }, compute: ({ limited }) => 2 * limited });
    const both = cell({ ...toy('both'), from: { late, beside }, compute: ({ late, beside }) => late + beside });
    const from = at(late, beside, both);
    const ask = { vary: late, xs: [1, 2, 3], read: [late, beside, both] };
    expect(swept(from, { ...ask, family: { vary: limited, values: [1, 4, 11, 3] } })).toEqual([
      [
        [1, 2, 3],
        [2, 2, 2],
        [3, 4, 5],
      ],
      [
        [1, 2, 3],
        [8, 8, 8],
        [9, 10, 11],
      ],
      [
        [1, 2, 3],
        [NaN, NaN, NaN],
        [NaN, NaN, NaN],
      ],
      [
        [1, 2, 3],
        [6, 6, 6],
        [7, 8, 9],
      ],
    ]);
    expect(swept(from, { ...ask, fixed: [{ cell: limited, value: -1 }] })).toEqual([
      [
        [1, 2, 3],
        [NaN, NaN, NaN],
        [NaN, NaN, NaN],
      ],
    ]);
  });

  it('leaves live values alone', () => {
    const live = new Live([line]);
    live.look([line]);
    live.run();
    swept(snapshot(live), { vary: x, xs: [7], read: [line] });
    expect(live.run()).toEqual([]);
    expect(live.state(line)).toEqual({ is: 'ready', value: 8 });
  });
});

describe('the steps of a sweep', () => {
  const work = slow({
    ...toy('work'),
    from: { x },
    *steps({ x }) {
      yield 0.5;
      return 100 * x;
    },
  });

  it('are points where the path is slow', () => {
    const steps = sweepSteps(at(work), { vary: x, xs: [1, 2, 3, 4], read: [work] });
    expect([...steps].map(shareOf)).toEqual([0.25, 0.5, 0.75, 1]);
    expect(swept(at(work), { vary: x, xs: [1, 2], read: [work] })).toEqual([[[100, 200]]]);
  });

  it('take a slow path’s points coarsely first, and show after each what stands', () => {
    const xs = [1, 2, 3, 4, 5];
    const seen = [...sweepSteps(at(work), { vary: x, xs, read: [work] })].map((step) =>
      typeof step === 'number' ? null : [...step.value[0]![0]!],
    );
    const to = NaN; // to come
    expect(seen).toEqual([
      [100, to, to, to, to],
      [100, to, to, to, 500],
      [100, to, 300, to, 500],
      [100, 200, 300, to, 500],
      [100, 200, 300, 400, 500],
    ]);
    for (const n of [0, 1, 2, 3, 17, 161])
      expect(coarselyFirst(n).toSorted((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, i) => i));
  });

  it('take the rough value of a slow cell that has one', () => {
    const rough = slow({ ...toy('rough'), from: { x }, steps: work.steps as never, rough: ({ x }) => 99 * x });
    expect(swept(at(rough), { vary: x, xs: [1, 2], read: [rough] })).toEqual([[[99, 198]]]);
  });

  it('are many points where it is quick', () => {
    const xs = Array.from({ length: 1024 }, (_, i) => i / 16);
    const shares = [...sweepSteps(at(square), { vary: x, xs, read: [square] })].map(shareOf);
    expect(shares.length).toBeLessThanOrEqual(xs.length / 64);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    for (const share of shares) expect(share > 0 && share <= 1).toBe(true);
  });

  it('do not begin before all that is read is settled', () => {
    const live = new Live([line]);
    const steps = sweepSteps(snapshot(live), { vary: x, xs: [1], read: [line] });
    expect(() => steps.next()).not.toThrow(); // only inputs stand beside the path
    const beside = cell({ ...toy('beside'), from: { square, b }, compute: ({ square, b }) => square + b });
    const empty = new Live([beside]);
    empty.fail(x, { at: 'x', about: 'x', message: ['Write a figure.'] });
    const from = snapshot(empty);
    expect(() => sweepSteps(from, { vary: b, xs: [1], read: [beside] }).next()).toThrow(NotSettled);
  });
});
