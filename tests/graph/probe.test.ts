import { describe, expect, it } from 'vitest';
import { cell, input, slow, type Cell, type Input } from '../../src/graph/cell.ts';
import { curve, optional, scalar } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';
import { moverOf, Probe } from '../../src/graph/probe.ts';
import { NotSettled, snapshot, type Snapshot } from '../../src/graph/snapshot.ts';
import { Impossible } from '../../src/graph/state.ts';
import { say } from '../../src/units/phrase.ts';
import { length, ratio } from '../../src/units/quantity.ts';
import { HandRunner } from './hand-runner.ts';
import { toy, typed } from './toy.ts';

const seen = (...cells: Cell[]): Live => {
  const live = new Live(cells);
  live.look(cells);
  live.run();
  return live;
};
const at = (...cells: Cell[]): Snapshot => snapshot(seen(...cells));
const ids = (cells: readonly Cell[]) => cells.map((c) => c.id);
const ask = (probe: Probe, x: unknown): unknown => {
  probe.put(0, x);
  probe.run();
  return probe.get(0);
};

const a = typed('a', 2, { hard: [-50, 50], label: 'A' });
const b = typed('b', 3);
const twice = cell({ ...toy('twice'), from: { a }, compute: ({ a }) => 2 * a });
const other = cell({ ...toy('other'), from: { a }, compute: ({ a }) => a - 1 });
const sum = cell({ ...toy('sum'), from: { twice, b }, compute: ({ twice, b }) => twice + b });
const top = cell({ ...toy('top'), from: { sum, other, b }, compute: ({ sum, other, b }) => sum * other + b });
const side = cell({ ...toy('side'), from: { sum }, compute: ({ sum }) => -sum });

describe('a what-if', () => {
  it('runs only the cells between what is varied and what is read', () => {
    const from = at(top, side);
    expect(ids(new Probe(from, [b], [sum]).path)).toEqual(['sum']);
    expect(ids(new Probe(from, [b], [top]).path)).toEqual(['sum', 'top']);
    expect(ids(new Probe(from, [a], [top]).path)).toEqual(['twice', 'sum', 'other', 'top']);
    expect(ids(new Probe(from, [a], [side]).path)).toEqual(['twice', 'sum', 'side']);
    expect(ids(new Probe(from, [b], [other]).path)).toEqual([]);
  });

  it('runs each of them once a point, and only those the put values reach', () => {
    const runs: string[] = [];
    const counted = (id: string, from: Readonly<Record<string, Cell<number>>>) =>
      cell({
        ...toy(id),
        from,
        compute: (given) => {
          runs.push(id);
          return Object.values(given).reduce((total, value) => total + value, 0);
        },
      });
    const ofA = counted('ofA', { a });
    const ofB = counted('ofB', { b });
    const both = counted('both', { ofA, ofB });
    const probe = new Probe(at(both), [a, b], [both]);
    probe.put(0, 1);
    probe.put(1, 1);
    probe.run();
    runs.length = 0;
    probe.put(0, 5);
    probe.run();
    expect(runs).toEqual(['ofA', 'both']);
    expect(probe.get(0)).toBe(6);
    runs.length = 0;
    probe.run();
    expect(runs).toEqual([]);
  });

  it('says what the live graph would say', () => {
    const probe = new Probe(at(top, side), [a, b], [top, side]);
    for (const [x, y] of [
      [0, 0],
      [7, 0],
      [7, -3],
      [2, 3],
    ] as const) {
      probe.put(0, x);
      probe.put(1, y);
      probe.run();
      // top = (2 a + b)(a - 1) + b, side = -(2 a + b)
      expect(probe.get(0)).toBe((2 * x + y) * (x - 1) + y);
      expect(probe.get(1)).toBe(-(2 * x + y));
    }
  });

  it('leaves live values alone, and is not moved by them', () => {
    const live = seen(top);
    const probe = new Probe(snapshot(live), [a], [top]);
    expect(ask(probe, 10)).toBe(23 * 9 + 3);
    expect(live.state(a)).toEqual({ is: 'ready', value: 2 });
    expect(live.state(top)).toEqual({ is: 'ready', value: 10 });
    live.set(b, 0);
    expect(live.run().length).toBeGreaterThan(0);
    expect(live.state(top)).toEqual({ is: 'ready', value: 4 });
    expect(ask(probe, 10)).toBe(23 * 9 + 3);
    expect(live.run()).toEqual([]);
  });

  it('keeps a varied cell that is not put where it stands', () => {
    const probe = new Probe(at(top), [a, b], [top]);
    probe.put(1, 4);
    probe.run();
    expect(probe.get(0)).toBe((2 * 2 + 4) * (2 - 1) + 4);
  });

  it('reads what is varied, and what is not reached, as it is', () => {
    const probe = new Probe(at(top), [a], [a, b, top]);
    probe.put(0, 5);
    probe.run();
    expect([probe.get(0), probe.get(1)]).toEqual([5, 3]);
  });

  it('varies a figure that may be left out', () => {
    const dome = input<number | null>({
      id: 'dome',
      label: '',
      note: '',
      kind: optional(scalar(length)),
      initial: null,
    });
    const height = cell({ ...toy('height'), from: { dome }, compute: ({ dome }) => dome ?? -1 });
    const probe = new Probe(at(height), [dome], [height]);
    expect(ask(probe, 0.5)).toBe(0.5);
    expect(ask(probe, null)).toBe(-1);
  });
});

describe('held cells in a what-if', () => {
  it('are varied as the inputs they are', () => {
    const live = seen(top);
    live.hold(sum, 10);
    live.run();
    const probe = new Probe(snapshot(live), [sum], [top]);
    expect(ids(probe.path)).toEqual(['top']);
    expect(ask(probe, 20)).toBe(20 * 1 + 3);
  });

  it('let nothing through', () => {
    const live = seen(top);
    live.hold(sum, 10);
    live.run();
    const probe = new Probe(snapshot(live), [a], [top]);
    expect(ids(probe.path)).toEqual(['other', 'top']);
    expect(ask(probe, 6)).toBe(10 * 5 + 3);
  });

  it('are varied directly even if they could be moved, since they are not free to follow', () => {
    const live = seen(effect);
    live.hold(closing, 3.8);
    live.run();
    const from = snapshot(live);
    expect(moverOf(from, closing)).toBeUndefined();
    const probe = new Probe(from, [closing], [effect]);
    expect(probe.movedTo(0)).toBeNull();
    expect(ask(probe, 4)).toBe(4 + 10 * opening.compute({ duration: 4.8, center: 1.9, advance: 0 } as never));
  });

  it('a derived cell that nothing moves is varied as if it were held', () => {
    const probe = new Probe(at(top), [sum], [top]);
    expect(ids(probe.path)).toEqual(['top']);
    expect(ask(probe, 20)).toBe(20 * 1 + 3);
    expect(probe.movedTo(0)).toBeNull();
  });

  it('and lets nothing through either while it is varied together with what it reads', () => {
    const probe = new Probe(at(top), [a, sum], [top]);
    probe.put(0, 6);
    probe.put(1, 20);
    probe.run();
    expect(probe.get(0)).toBe(20 * 5 + 3);
  });
});

// An intake valve, all in radians: moving the closing by the cam moves the opening too, and the effect feels both.
const advance = typed('advance', 0, { label: 'Advance', hard: [-0.5, 0.5] });
const duration = typed('duration', 4.8, { label: 'Duration', hard: [3, 6] });
const duration050 = typed('duration050', 3.9);
const center = typed('center', 1.9);
const closing = cell({
  ...toy('closing'),
  from: { duration, center, advance },
  movedBy: [
    { label: 'the cam', inputs: [advance] },
    { label: 'the duration', inputs: [duration, duration050] },
  ],
  compute: ({ duration, center, advance }) => duration / 2 + center - advance,
});
const opening = cell({
  ...toy('opening'),
  from: { duration, center, advance },
  compute: ({ duration, center, advance }) => duration / 2 - center + advance,
});
const effect = cell({ ...toy('effect'), from: { closing, opening }, compute: (g) => g.closing + 10 * g.opening });

/** Sets the mover's inputs where the probe says they went, and reads the live graph there. */
function dragged(probe: Probe, k: number, ...read: Cell<number>[]): (number | undefined)[] {
  const live = seen(...read);
  for (const { input: moved, value } of probe.movedTo(k)!) live.set(moved, value);
  live.run();
  return read.map((c) => {
    const state = live.state(c);
    return state.is === 'ready' ? state.value : undefined;
  });
}

describe('a derived cell that can be moved', () => {
  it('is varied by solving for its mover, so that a sweep at x says what dragging to x says', () => {
    const probe = new Probe(at(effect), [closing], [effect, closing]);
    for (const x of [4.3, 4.1, 4.5, 4.7]) {
      probe.put(0, x);
      probe.run();
      expect(probe.movedTo(0)).toEqual([{ input: advance, value: expect.closeTo(4.3 - x, 14) }]);
      expect(probe.get(1)).toBeCloseTo(x, 14);
      // closing + 10 opening, with closing + opening = duration
      expect(probe.get(0)).toBeCloseTo(x + 10 * (4.8 - x), 12);
      expect([probe.get(0), probe.get(1)]).toEqual(dragged(probe, 0, effect, closing));
    }
  });

  it('runs what else the mover moves, and stays out of the way of the rest', () => {
    const probe = new Probe(at(effect), [closing], [effect]);
    expect(ids(probe.path)).toEqual(['closing', 'opening', 'effect']);
    expect(new Probe(at(effect), [closing], [opening]).path).toContain(closing);
  });

  it('shifts several inputs together', () => {
    const broad = cell({
      ...toy('broad'),
      from: { duration, center },
      movedBy: [{ label: 'the duration', inputs: [duration, duration050] }],
      compute: ({ duration, center }) => duration / 2 + center,
    });
    const reads = cell({ ...toy('reads'), from: { broad, duration050 }, compute: (g) => g.broad * g.duration050 });
    const probe = new Probe(at(reads), [broad], [reads]);
    expect(ask(probe, 4.4)).toBeCloseTo(4.4 * (3.9 + 0.2), 12); // 0.1 later is 0.2 longer
    const moved = probe.movedTo(0)!;
    expect(moved.map((m) => m.input.id)).toEqual(['duration', 'duration050']);
    expect(moved.map((m) => m.value)).toEqual([expect.closeTo(5, 13), expect.closeTo(4.1, 13)]);
    expect([probe.get(0)]).toEqual(dragged(probe, 0, reads));
  });

  it('brings it back to its place when another varied cell shifts it', () => {
    const probe = new Probe(at(effect), [closing, duration], [effect, closing]);
    probe.put(0, 4.2);
    probe.put(1, 4.8);
    probe.run();
    probe.put(1, 5);
    probe.run();
    expect(probe.get(1)).toBeCloseTo(4.2, 14);
    expect(probe.get(0)).toBeCloseTo(4.2 + 10 * (5 - 4.2), 12);
    expect(probe.movedTo(0)![0]!.value).toBeCloseTo(2.5 + 1.9 - 4.2, 13);
  });

  it('is felt by what only its mover reaches when another varied cell shifts it', () => {
    const early = cell({ ...toy('early'), from: { advance }, compute: ({ advance }) => 10 * advance });
    const probe = new Probe(at(closing, early), [closing, duration], [early]);
    probe.put(0, 4.3);
    probe.put(1, 4.8);
    probe.run();
    expect(probe.get(0)).toBeCloseTo(0, 12);
    probe.put(1, 5);
    probe.run();
    expect(probe.get(0)).toBeCloseTo(1, 12);
  });

  it('along a straight line is there at the second try', () => {
    let tries = 0;
    const counted = cell({
      ...toy('counted'),
      from: { advance },
      movedBy: [{ label: 'the cam', inputs: [advance] }],
      compute: ({ advance }) => {
        tries++;
        return 4 - advance;
      },
    });
    const probe = new Probe(at(counted), [counted], [counted]);
    ask(probe, 4.2);
    tries = 0;
    for (const x of [4.1, 3.9, 4.4, 3.75]) ask(probe, x);
    expect(tries).toBeLessThanOrEqual(3 * 4); // from where it stands, to the aim, and once with all that reads it
  });

  it('respects what physics allows its mover, says so, and goes on at the next point', () => {
    const probe = new Probe(at(effect), [closing], [effect]);
    expect(() => ask(probe, 4.81)).toThrow(Impossible);
    try {
      ask(probe, 4.81);
    } catch (error) {
      expect(say((error as Impossible).phrase, 'si')).toBe('Advance lies between -0.50 and 0.50.'.replace('-', '−'));
    }
    expect(ask(probe, 4.79)).toBeCloseTo(4.79 + 10 * 0.01, 12);
    expect(() => ask(probe, 4.81)).toThrow('Advance lies between ');
    expect(() => ask(probe, 3.79)).toThrow('Advance lies between ');
    expect(ask(probe, 3.81)).toBeCloseTo(3.81 + 10 * 0.99, 12);
  });

  it('takes the next way to move it where a held cell stands in the way of the first', () => {
    const phase = cell({ ...toy('phase'), from: { advance }, compute: ({ advance }) => -advance });
    const late = cell({
      ...toy('late'),
      from: { phase, duration },
      movedBy: [
        { label: 'the cam', inputs: [advance] },
        { label: 'the duration', inputs: [duration] },
      ],
      compute: ({ phase, duration }) => phase + duration / 2,
    });
    const live = seen(late);
    expect(moverOf(snapshot(live), late)?.label).toBe('the cam');
    live.hold(phase, 0.1);
    live.run();
    expect(moverOf(snapshot(live), late)?.label).toBe('the duration');
    const probe = new Probe(snapshot(live), [late], [late]);
    expect(ask(probe, 2.7)).toBeCloseTo(2.7, 13);
    expect(probe.movedTo(0)).toEqual([{ input: duration, value: expect.closeTo(5.2, 13) }]);
  });
});

describe('a derived cell that moves along a curve', () => {
  // Volumes in cubic meters: a step of one is a million times too far.
  const swept = typed('swept', 7e-4);
  const compression = (chamber: Input<number>) =>
    cell({
      ...toy('compression'),
      from: { swept, chamber },
      movedBy: [{ label: 'the chamber', inputs: [chamber] }],
      compute: ({ swept, chamber }) => {
        if (chamber <= 0) throw new Impossible(['There is no chamber.'], 'chamber');
        return 1 + swept / chamber;
      },
    });

  it.each([
    ['with a hard range', typed('chamber', 7e-5, { hard: [1e-5, 1e-3] })],
    ['with no range at all', typed('chamber', 7e-5)],
  ])('lands where the closed form says, %s', (_, chamber) => {
    const squeeze = compression(chamber);
    const probe = new Probe(at(squeeze), [squeeze], [squeeze]);
    for (const x of [11, 8, 14, 9.5, 30, 2, 11]) {
      expect(ask(probe, x)).toBeCloseTo(x, 10);
      expect(probe.movedTo(0)![0]!.value * (x - 1)).toBeCloseTo(7e-4, 14); // chamber = swept / (ratio - 1)
      expect([probe.get(0)]).toEqual(dragged(probe, 0, squeeze));
    }
    expect(() => ask(probe, 0.5)).toThrow(Impossible);
    expect(ask(probe, 9)).toBeCloseTo(9, 10);
  });

  const curveOf = (initial: number, f: (x: number) => number, more: Partial<Input<number>> = {}) => {
    const x = typed('x', initial, more);
    const y = cell({ ...toy('y'), from: { x }, movedBy: [{ label: 'x', inputs: [x] }], compute: ({ x }) => f(x) });
    const probe = new Probe(at(y), [y], [y]);
    return (aim: number): number => {
      ask(probe, aim);
      return probe.movedTo(0)![0]!.value;
    };
  };
  const root = (x: number): number => {
    if (x < 0) throw new RangeError('No root of less than nothing.');
    return Math.sqrt(x);
  };

  it('finds its way back from where the curve has no answer', () => {
    const solved = curveOf(1, root);
    for (const aim of [0.01, 3, 1e-3, 0.5]) expect(solved(aim)).toBeCloseTo(aim * aim, 11);
  });

  it('finds its way up a very steep curve', () => {
    const solved = curveOf(0, (x) => Math.exp(10 * x));
    for (const aim of [1, Math.exp(10), Math.exp(-20)]) expect(solved(aim)).toBeCloseTo(Math.log(aim) / 10, 9);
  });

  it('stays on the branch where it stands, whatever was asked before', () => {
    const solved = curveOf(3, (x) => (x - 1) ** 2);
    const there = [9, 0.25, 1e-4, 4, 100].map((aim) => [aim, solved(aim)] as const);
    for (const [aim, x] of there) expect(x).toBeCloseTo(1 + Math.sqrt(aim), 7);
    for (const [aim, x] of there.toReversed()) expect(solved(aim)).toBe(x);
    expect(() => solved(-1)).toThrow(Impossible);
    expect(solved(9)).toBeCloseTo(4, 10);
  });

  it('sets out from where the curve is flat, and stops short of where it ends', () => {
    const solved = curveOf(0, (x) => {
      if (x > 1.9) throw new RangeError('It ends here.');
      return x < 0.5 ? 0 : -((x - 0.5) ** 2);
    });
    for (const aim of [-1.9, -0.3, -1.95]) expect(solved(aim)).toBeCloseTo(0.5 + Math.sqrt(-aim), 9);
    expect(() => solved(-1.97)).toThrow(Impossible);
  });

  it('turns the way that physics allows from where the curve is flat', () => {
    const valley = (x: number): number => (x - 1) ** 2;
    expect(curveOf(1, valley)(4)).toBeCloseTo(3, 9);
    expect(curveOf(1, valley, { hard: [-10, 2] })(4)).toBeCloseTo(-1, 9);
    expect(() => curveOf(1, valley, { hard: [0, 2] })(4)).toThrow(Impossible);
  });

  it('does not take a jump over the aim for the aim', () => {
    const solved = curveOf(0.3, (x) => Math.floor(x) + x / 10, { hard: [-5, 5] });
    expect(solved(1.15)).toBeCloseTo(1.5, 10);
    expect(() => solved(0.5)).toThrow(Impossible); // 0.1 is followed by 1.1
  });

  it('bears the rounding of a value that was itself searched for', () => {
    const solved = curveOf(1, (x) => x + 1e-13 * Math.sin(1e9 * x));
    for (const aim of [2, 5, 1.5]) expect(solved(aim)).toBeCloseTo(aim, 11);
  });
});

describe('two cells that are moved at once', () => {
  const depth = typed('depth', 1);
  const width = typed('width', 2);
  const face = cell({
    ...toy('face'),
    from: { depth, width },
    movedBy: [{ label: 'the depth', inputs: [depth] }],
    compute: ({ depth, width }) => depth * width,
  });
  const span = cell({
    ...toy('span'),
    from: { width },
    movedBy: [{ label: 'the width', inputs: [width] }],
    compute: ({ width }) => width + 1,
  });

  it.each([
    ['the one that leans on the other first', [face, span], [10, 6]],
    ['the one that leans on the other last', [span, face], [6, 10]],
  ] as const)('both come to their aim, %s', (_, cells, aims) => {
    const probe = new Probe(at(face, span), cells, [...cells, depth, width]);
    probe.put(0, aims[0]);
    probe.put(1, aims[1]);
    probe.run();
    expect(probe.get(0)).toBeCloseTo(aims[0], 12);
    expect(probe.get(1)).toBeCloseTo(aims[1], 12);
    expect([probe.get(2), probe.get(3)]).toEqual([expect.closeTo(2, 12), expect.closeTo(5, 12)]);
  });

  it('are refused where both would move one input, or one is that input', () => {
    const also = cell({
      ...toy('also'),
      from: { width },
      movedBy: [{ label: 'the width', inputs: [width] }],
      compute: ({ width }) => 3 * width,
    });
    const from = at(span, also);
    expect(() => new Probe(from, [span, also], [span])).toThrow(Impossible);
    expect(() => new Probe(from, [width, span], [span])).toThrow(Impossible);
  });

  it('have no answer where they will not come to rest together', () => {
    const one = cell({
      ...toy('one'),
      from: { depth, width },
      movedBy: [{ label: 'the depth', inputs: [depth] }],
      compute: ({ depth, width }) => depth + width,
    });
    const two = cell({
      ...toy('two'),
      from: { depth, width },
      movedBy: [{ label: 'the width', inputs: [width] }],
      compute: ({ depth, width }) => depth + width + 1,
    });
    const probe = new Probe(at(one, two), [one, two], [one]);
    probe.put(0, 5);
    probe.put(1, 9);
    expect(() => probe.run()).toThrow(Impossible);
    probe.put(1, 6);
    probe.run();
    expect(probe.get(0)).toBeCloseTo(5, 12);
  });
});

describe('where a cell has no answer', () => {
  const high = cell({
    ...toy('high'),
    from: { a },
    compute: ({ a }) => {
      if (a > 10) throw new Impossible(['Too high.'], 'a');
      return a;
    },
  });
  const log = cell({ ...toy('log'), from: { a }, compute: ({ a }) => Math.log(a) });
  const positive = cell({ ...toy('positive'), from: { log }, compute: ({ log }) => (log > 0 ? 1 : 0) });

  it('says so, and recovers at the next point', () => {
    const after = cell({ ...toy('after'), from: { high, b }, compute: ({ high, b }) => high + b });
    const probe = new Probe(at(after), [a], [after]);
    expect(ask(probe, 10)).toBe(13);
    expect(() => ask(probe, 11)).toThrow('Too high.');
    expect(() => probe.get(0)).toThrow('Too high.');
    expect(ask(probe, 9)).toBe(12);
  });

  it('and recovers when the cure is the other varied cell', () => {
    const limited = cell({
      ...toy('limited'),
      from: { a, b },
      compute: ({ a, b }) => {
        if (a > b) throw new Impossible(['Over the limit.']);
        return b - a;
      },
    });
    const after = cell({ ...toy('after'), from: { limited, twice }, compute: (g) => g.limited + g.twice });
    const probe = new Probe(at(after), [a, b], [after]);
    probe.put(0, 8);
    expect(() => probe.run()).toThrow('Over the limit.');
    probe.put(1, 9);
    probe.run();
    expect(probe.get(0)).toBe(1 + 16);
  });

  it('lets nobody compute from what is no figure, as the live graph does not', () => {
    const probe = new Probe(at(positive), [a], [positive]);
    expect(ask(probe, 1.5)).toBe(1);
    expect(() => ask(probe, -1)).toThrow(Impossible);
    expect(() => ask(probe, 0)).toThrow(Impossible);
    expect(ask(probe, 0.5)).toBe(0);
  });

  it('nor from a curve with such a sample', () => {
    const trace = cell({
      ...toy('trace'),
      kind: curve(ratio, ratio),
      from: { a },
      compute: ({ a }) => ({ x: Float64Array.of(0, 1), y: Float64Array.of(a, Math.sqrt(a)) }),
    });
    const first = cell({ ...toy('first'), from: { trace }, compute: ({ trace }) => trace.y[0]! });
    const probe = new Probe(at(first), [a], [first]);
    expect(ask(probe, 4)).toBe(4);
    expect(() => ask(probe, -4)).toThrow(Impossible);
    expect(ask(probe, 9)).toBe(9);
  });

  it('still answers for what else is read', () => {
    const probe = new Probe(at(high, twice), [a], [high, twice]);
    probe.put(0, 11);
    probe.run();
    expect(() => probe.get(0)).toThrow('Too high.');
    expect(probe.get(1)).toBe(22);
  });

  it('respects the hard range of an input, and goes on inside it', () => {
    const probe = new Probe(at(twice), [a], [twice]);
    expect(() => ask(probe, 50.1)).toThrow(Impossible);
    expect(() => ask(probe, NaN)).toThrow(Impossible);
    expect(ask(probe, 50)).toBe(100);
  });

  it('takes nothing that is no figure for a held cell', () => {
    const sign = cell({ ...toy('sign'), from: { sum }, compute: ({ sum }) => (sum > 0 ? 1 : 0) });
    const probe = new Probe(at(sign), [sum], [sign]);
    expect(() => ask(probe, NaN)).toThrow(Impossible);
    expect(ask(probe, 0)).toBe(0);
  });
});

describe('a what-if has to wait', () => {
  const work = slow({
    ...toy('work'),
    from: { a },
    *steps({ a }) {
      yield 0.5;
      return 100 * a;
    },
  });
  const mixed = cell({ ...toy('mixed'), from: { work, b }, compute: ({ work, b }) => work + b });
  const waiting = () => {
    const runner = new HandRunner();
    const live = new Live([mixed], { runner });
    live.look([mixed]);
    live.run();
    return { live, runner };
  };
  const cause = (make: () => unknown): unknown => {
    try {
      make();
    } catch (error) {
      return error instanceof NotSettled ? [error.cell.id, error.state.is] : error;
    }
    return 'no cause to wait';
  };

  it('while what it reads beside its path is not settled', () => {
    const { live, runner } = waiting();
    expect(cause(() => new Probe(snapshot(live), [b], [mixed]))).toEqual(['work', 'waiting']);
    runner.last.provisional(190, 0.5);
    expect(cause(() => new Probe(snapshot(live), [b], [mixed]))).toEqual(['work', 'coming']);
    runner.last.answer(200);
    expect(ask(new Probe(snapshot(live), [b], [mixed]), 5)).toBe(205);
    live.set(a, 51);
    live.run();
    expect(cause(() => new Probe(snapshot(live), [b], [mixed]))).toEqual(['work', 'fault']);
  });

  it('while something it reads directly is not settled', () => {
    const { live } = waiting();
    expect(cause(() => new Probe(snapshot(live), [b], [work]))).toEqual(['work', 'waiting']);
  });

  it('not for what nobody looks at: it is worked out from the values of the snapshot’s moment', () => {
    const live = new Live([top]);
    const unlook = live.look([top]);
    live.run();
    unlook();
    live.look([other]);
    live.set(a, 5);
    live.run();
    const at = snapshot(live);
    live.set(a, 50);
    live.run();
    const probe = new Probe(at, [b], [sum]);
    probe.put(0, 100);
    probe.run();
    expect(probe.get(0)).toBe(2 * 5 + 100);
    expect(live.state(twice).is).toBe('waiting');
  });

  it('while the inputs of a mover are not settled', () => {
    const live = seen(effect);
    live.set(advance, 2);
    live.run();
    expect(cause(() => new Probe(snapshot(live), [closing], [effect]))).toEqual(['advance', 'fault']);
  });

  it('but not for a varied input that is at fault now', () => {
    const live = seen(top);
    live.set(a, 99);
    live.run();
    const probe = new Probe(snapshot(live), [a], [top]);
    expect(() => probe.run()).toThrow('A lies between ');
    expect(ask(probe, 2)).toBe(10);
  });

  it('but not for a slow cell on its path, which it says is slow, and runs to the end', () => {
    const { live } = waiting();
    const probe = new Probe(snapshot(live), [a], [mixed]);
    expect(probe.isSlow).toBe(true);
    expect(ask(probe, 7)).toBe(703);
    expect(new Probe(at(top), [a], [top]).isSlow).toBe(false);
  });

  it('but not for what a second varied cell brings along', () => {
    const { live } = waiting();
    const probe = new Probe(snapshot(live), [b, a], [mixed]);
    probe.put(0, 1);
    probe.run();
    expect(probe.get(0)).toBe(201);
  });
});

it('a figure on a scale of its own is moved as any other', () => {
  const warm = typed('warm', 288, { kind: scalar(ratio), hard: [200, 350] });
  const hot = cell({
    ...toy('hot'),
    from: { warm },
    movedBy: [{ label: 'the air', inputs: [warm] }],
    compute: ({ warm }) => 2.5 * warm - 100,
  });
  const probe = new Probe(at(hot), [hot], [hot]);
  expect(ask(probe, 650)).toBeCloseTo(650, 11);
  expect(probe.movedTo(0)![0]!.value).toBeCloseTo(300, 11);
});
