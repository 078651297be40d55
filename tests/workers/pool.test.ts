import { beforeEach, describe, expect, it } from 'vitest';
import { type Cell, cell, slow, slowInParts } from '../../src/graph/cell.ts';
import type { Answer, Found, Task } from '../../src/graph/explorer.ts';
import { Live } from '../../src/graph/live.ts';
import type { News } from '../../src/graph/runner.ts';
import { Impossible, type State } from '../../src/graph/state.ts';
import type { SweepItem } from '../../src/notebook/document.ts';
import { Store } from '../../src/notebook/store.ts';
import { isSlow, questionOf, sweepNow, taskOf } from '../../src/notebook/sweeps.ts';
import { phrase, say, value } from '../../src/units/phrase.ts';
import * as u from '../../src/units/unit.ts';
import { length } from '../../src/units/quantity.ts';
import { Pool } from '../../src/workers/pool.ts';
import { toy, typed } from '../graph/toy.ts';
import { catalogue, cellOf, inputOf, opened, quick, scenario, valueOf } from '../notebook/notebooks.ts';
import { InProcessPort, settle, until } from './in-process-port.ts';

/** Closed, it keeps the slow toys busy. */
const gate = { open: true };
beforeEach(() => {
  gate.open = true;
});

const x = typed('x', 2);
const y = typed('y', 3);
const square = slow({
  ...toy('square'),
  from: { x },
  *steps({ x: given }) {
    while (!gate.open) yield 0.5;
    if (given < 0) throw new Impossible(phrase`No square of ${value(given, length)} here.`, 'x');
    if (given === 99) throw new TypeError('something broke');
    return given ** 2;
  },
});
const half = cell({ ...toy('half'), from: { square }, compute: ({ square: s }) => s / 2 });
/** Sums 1 to x in parts; while half of them stand their mean stands in for the rest. */
const sum = slowInParts({
  ...toy('sum'),
  from: { x, y },
  parts: {
    list: ({ x: upTo }) => {
      if (upTo > 100) throw new Impossible(['That is too many parts.'], 'x');
      return Array.from({ length: upTo }, (_, i) => i + 1);
    },
    *one({ y: times }, part) {
      yield 0.5;
      while (!gate.open) yield 0.5;
      if (times === -1 && part === 2) throw new Impossible(['The second part cannot be had.'], 'y');
      return part * times;
    },
    join({ y: times }, results) {
      const known = results.filter((result) => result !== undefined);
      if (times === -2 && known.length === 2) throw new Impossible(['Two of them do not go together.'], 'y');
      if (known.length * 2 < results.length) return undefined;
      if (results.length === 0) return 0;
      return (known.reduce((total, result) => total + result, 0) / known.length) * results.length;
    },
  },
});
const toys = new Map<string, Cell>([x, y, square, half, sum].map((c) => [c.id, c as Cell]));

/** A pool with the workers it has hired. */
function pooled(size: number, cells: ReadonlyMap<string, Cell> = toys) {
  const ports: InProcessPort[] = [];
  const pool = new Pool(() => {
    const port = new InProcessPort(cells);
    ports.push(port);
    return port;
  }, size);
  return { pool, ports };
}
/** A live graph on a pool, and the states its cells went through. */
function living(pool: Pool, looked: readonly Cell[]) {
  const seen: (readonly [string, State])[] = [];
  const live = new Live(toys.values(), {
    runner: pool,
    onNews: (changed) => seen.push(...changed.map((c) => [c.id, live.state(c)] as const)),
  });
  live.look(looked);
  live.run();
  return { live, seen, statesOf: (c: Cell) => seen.filter(([id]) => id === c.id).map(([, state]) => state) };
}
const isReady = (live: Live, c: Cell) => () => live.state(c).is === 'ready';

describe('a slow cell', () => {
  it('waits, then has the value it has inline, and so have its readers', async () => {
    const { live } = living(pooled(1).pool, [half]);
    expect(live.state(square)).toMatchObject({ is: 'waiting' });
    expect(live.state(half)).toMatchObject({ is: 'waiting' });
    await until(isReady(live, half), 'half');
    const inline = new Live(toys.values());
    inline.look([half]);
    inline.run();
    for (const c of [square, half]) expect(live.state(c)).toEqual(inline.state(c));
  });
  it('tells how far it is', async () => {
    gate.open = false;
    const { live, statesOf } = living(pooled(1).pool, [square]);
    await until(() => statesOf(square).length > 0, 'news');
    expect(statesOf(square)[0]).toMatchObject({ is: 'waiting', done: 0.5 });
    gate.open = true;
    await until(isReady(live, square), 'square');
  });
  it('of newer inputs stops the older work, and no older answer shows', async () => {
    const { pool, ports } = pooled(1);
    const { live, statesOf } = living(pool, [square]);
    gate.open = false;
    for (const now of [3, 4, 5]) {
      live.set(x, now);
      live.run();
      await settle();
    }
    gate.open = true;
    await until(isReady(live, square), 'square');
    await settle();
    expect(statesOf(square).filter((state) => state.is === 'ready')).toEqual([{ is: 'ready', value: 25 }]);
    expect(ports).toHaveLength(1);
    expect(ports[0]!.told.filter((tell) => tell.is === 'stopped').length).toBeGreaterThan(0);
  });
  it('that has no answer says why, in words with figures in them, at the cell where it began', async () => {
    const { live } = living(pooled(1).pool, [half]);
    live.set(x, -0.0254);
    live.run();
    await until(() => live.state(half).is === 'fault', 'fault');
    const state = live.state(half);
    if (state.is !== 'fault') throw new Error('no fault');
    expect([state.fault.at, state.fault.about]).toEqual(['square', 'x']);
    expect(say(state.fault.message, 'us')).toBe('No square of −1.000 in here.');
    live.set(x, 99);
    live.run();
    await until(() => JSON.stringify(live.state(square)).includes('something broke'), 'the other fault');
    live.set(x, 3);
    live.run();
    await until(isReady(live, square), 'square after a fault');
  });
  it('comes back at once when it was known before', async () => {
    const { pool, ports } = pooled(1);
    const { live } = living(pool, [square]);
    await until(isReady(live, square), 'first');
    live.set(x, 7);
    live.run();
    await until(isReady(live, square), 'second');
    const { length: asked } = ports[0]!.asked;
    live.set(x, 2);
    live.run();
    expect(live.state(square)).toEqual({ is: 'ready', value: 4 });
    expect(ports[0]!.asked).toHaveLength(asked);
  });
});

describe('a slow cell in parts', () => {
  it('is shared among the workers, shows what stands so far, and comes to what it comes to inline', async () => {
    const { pool, ports } = pooled(3);
    const { live, statesOf } = living(pool, [sum]);
    live.set(x, 6);
    live.run();
    await until(isReady(live, sum), 'sum');
    expect(live.state(sum)).toEqual({ is: 'ready', value: 3 * (1 + 2 + 3 + 4 + 5 + 6) });
    expect(ports).toHaveLength(3);
    const parts = ports.map((port) => port.asked.filter((ask) => ask.do === 'part').length);
    expect(Math.min(...parts)).toBeGreaterThan(0);
    const states = statesOf(sum).filter((state) => state.is !== 'waiting');
    expect(states.map((state) => state.is).slice(-4)).toEqual(['coming', 'coming', 'coming', 'ready']);
    const shares = statesOf(sum).flatMap((state) => ('done' in state ? [state.done] : []));
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  });
  it('has readers that follow it while it is coming', async () => {
    const twice = cell({ ...toy('twice'), from: { sum }, compute: ({ sum: s }) => 2 * s });
    const seen: State[] = [];
    const live = new Live([...toys.values(), twice], {
      runner: pooled(1).pool,
      onNews: (changed) => changed.includes(twice) && seen.push(live.state(twice)),
    });
    live.set(x, 4);
    live.look([twice]);
    live.run();
    await until(isReady(live, twice), 'twice');
    // One worker takes the parts in order: the means of 3, 6 and 3, 6, 9 stand in for the four of them.
    expect(seen.filter((s) => s.is === 'coming' || s.is === 'ready').map((s) => s.value)).toEqual([36, 48, 60]);
  });
  it('with one part that has no answer has none, and stops the others', async () => {
    const { pool, ports } = pooled(2);
    const { live, statesOf } = living(pool, [sum]);
    live.set(x, 8);
    live.set(y, -1);
    live.run();
    await until(() => live.state(sum).is === 'fault', 'fault');
    await settle();
    expect(live.state(sum)).toMatchObject({ is: 'fault', fault: { at: 'sum', about: 'y' } });
    expect(statesOf(sum).filter((state) => state.is === 'fault')).toHaveLength(1);
    expect(ports.flatMap((port) => port.asked).filter((ask) => ask.do === 'part').length).toBeLessThan(10);
  });
  it('that cannot be listed or joined has a fault in words, and the page lives on', async () => {
    const { live } = living(pooled(2).pool, [sum]);
    live.set(x, 101);
    expect(() => live.run()).not.toThrow();
    expect(live.state(sum)).toMatchObject({
      is: 'fault',
      fault: { at: 'sum', about: 'x', message: ['That is too many parts.'] },
    });
    live.set(x, 4);
    live.set(y, -2);
    live.run();
    await until(() => live.state(sum).is === 'fault', 'fault of a join');
    expect(live.state(sum)).toMatchObject({ fault: { about: 'y', message: ['Two of them do not go together.'] } });
    await settle();
    live.set(y, 1);
    live.run();
    await until(isReady(live, sum), 'sum after a fault');
    expect(live.state(sum)).toEqual({ is: 'ready', value: 10 });
  });
  it('with no parts at all is what it is inline', async () => {
    const { live } = living(pooled(2).pool, [sum]);
    live.set(x, 0);
    live.run();
    await until(isReady(live, sum), 'nothing');
    expect(live.state(sum)).toEqual({ is: 'ready', value: 0 });
  });
});

describe('stopping', () => {
  it('leaves the cell waiting with what it had, and the worker free for the next', async () => {
    const { pool, ports } = pooled(1);
    const { live } = living(pool, [square]);
    await until(isReady(live, square), 'first');
    gate.open = false;
    live.set(x, 5);
    live.run();
    await settle();
    live.stop(square);
    expect(live.state(square)).toMatchObject({ is: 'waiting', last: 4, stopped: true });
    expect(live.busy).toBe(false);
    await until(() => ports[0]!.told.some((tell) => tell.is === 'stopped'), 'the worker');
    gate.open = true;
    await settle();
    expect(live.state(square)).toMatchObject({ is: 'waiting', stopped: true });
    live.resume(square);
    await until(isReady(live, square), 'square again');
    expect(live.state(square)).toEqual({ is: 'ready', value: 25 });
    expect(ports).toHaveLength(1);
  });
  it('takes what has not begun out of the queue', async () => {
    gate.open = false;
    const { pool, ports } = pooled(1);
    const heard: News[] = [];
    const stops = [1, 2, 3].map((given) =>
      pool.start({ owner: 1, cell: square, given: { x: given } }, (news) => {
        if (news.is !== 'waiting') heard.push(news);
      }),
    );
    stops[1]!();
    stops[1]!();
    gate.open = true;
    await until(() => heard.length === 2, 'the other two');
    await settle();
    expect(heard).toEqual([
      { is: 'ready', value: 1 },
      { is: 'ready', value: 9 },
    ]);
    expect(ports[0]!.asked.map((ask) => ask.do)).toEqual(['steps', 'steps']);
  });
  it('does not hold up a first look: its parts go before other work, asked for before or after', async () => {
    const looked = slowInParts({
      ...toy('looked'),
      from: { x },
      parts: {
        list: () => [1, 2, 3],
        first: () => 2,
        *one(_, part: number) {
          yield 0.5;
          return part;
        },
        join: (_, results: readonly (number | undefined)[]) => results[1],
      },
    });
    const { pool, ports } = pooled(1, new Map<string, Cell>([...toys, ['looked', looked]]));
    pool.start({ owner: 1, cell: square, given: { x: 3 } }, () => {});
    let last: News | undefined;
    pool.start({ owner: 1, cell: looked, given: { x: 1 } }, (news) => (last = news));
    await until(() => last?.is === 'ready', 'all of it');
    expect(ports[0]!.asked.map((ask) => (ask.do === 'part' ? ask.part : ask.do))).toEqual([0, 1, 'steps', 2]);
  });
  it('of idle work comes by itself as soon as something else waits, and it is begun again after that', async () => {
    const slowly = slow({
      ...toy('slowly'),
      from: { x },
      idle: true,
      *steps({ x: given }) {
        while (!gate.open) yield 0.5;
        return -given;
      },
    });
    const { pool, ports } = pooled(1, new Map<string, Cell>([...toys, ['slowly', slowly]]));
    gate.open = false;
    const heard: (readonly [string, News])[] = [];
    const start = (c: typeof slowly, given: number): (() => void) =>
      pool.start({ owner: 1, cell: c, given: { x: given } }, (news) => {
        if (news.is !== 'waiting') heard.push([c.id, news]);
      });
    start(slowly, 1);
    const stop = start(slowly, 2);
    await until(() => (ports[0]?.told.length ?? 0) > 0, 'it to be under way');
    start(square, 3);
    await until(() => ports[0]!.told.at(-1)!.is === 'stopped', 'it to make way');
    await settle();
    stop();
    gate.open = true;
    await until(() => heard.length === 2, 'both');
    await settle();
    expect(heard).toEqual([
      ['square', { is: 'ready', value: 9 }],
      ['slowly', { is: 'ready', value: -1 }],
    ]);
    const asked = ports[0]!.asked.map((ask) => (ask.do === 'steps' ? ask.cell : ask.do));
    expect(asked).toEqual(['slowly', 'stop', 'square', 'slowly']);
  });
  it('of idle work is for good when it is not wanted any more, even while it makes way', async () => {
    const slowly = slow({
      ...toy('slowly'),
      from: { x },
      idle: true,
      *steps() {
        while (!gate.open) yield 0.5;
        return 1;
      },
    });
    const { pool, ports } = pooled(1, new Map<string, Cell>([...toys, ['slowly', slowly]]));
    gate.open = false;
    const stop = pool.start({ owner: 1, cell: slowly, given: { x: 1 } }, () => {});
    await until(() => (ports[0]?.told.length ?? 0) > 0, 'it to be under way');
    let last: News | undefined;
    pool.start({ owner: 1, cell: square, given: { x: 3 } }, (news) => (last = news));
    await Promise.resolve();
    stop();
    await until(() => ports[0]!.told.some((tell) => tell.is === 'stopped'), 'it to make way');
    gate.open = true;
    await until(() => last?.is === 'ready', 'the other');
    await settle();
    expect(ports[0]!.asked.filter((ask) => ask.do === 'steps')).toHaveLength(2);
  });
  it('does not let other graphs go before the one the page is about, nor idle work before either', async () => {
    const spare = slow({
      ...toy('spare'),
      from: { x },
      idle: true,
      *steps({ x: given }) {
        yield 0.5;
        return given;
      },
    });
    const { pool, ports } = pooled(1, new Map<string, Cell>([...toys, ['spare', spare]]));
    const done: number[] = [];
    const start = (c: typeof spare, given: number, isOther: boolean): unknown =>
      pool.start({ owner: 1, cell: c, given: { x: given }, isOther }, ({ is }) => is === 'ready' && done.push(given));
    start(spare, 5, true);
    start(spare, 4, false);
    start(square, 3, true);
    start(square, 1, false);
    start(square, 2, false);
    await until(() => done.length === 5, 'all of them');
    expect(done).toEqual([1, 2, 3, 4, 5]);
    expect(ports).toHaveLength(1);
  });
  it('warms up every worker with a slow cell at its starting values', async () => {
    const { pool, ports } = pooled(2);
    pool.warm('square');
    await until(() => ports.length === 2 && ports.every((port) => port.told.length > 0), 'both');
    for (const port of ports) expect(port.told.map((tell) => tell.is)).toEqual(['ready']);
  });
  it('is heard even of work that was done by then: its answer is not reported', async () => {
    const { pool, ports } = pooled(1);
    const heard: News[] = [];
    const stop = pool.start({ owner: 1, cell: square, given: { x: 3 } }, (news) => heard.push(news));
    await Promise.resolve(); // it is dealt out behind what asked for it
    ports[0]!.holdBack();
    await until(() => ports[0]!.told.some((tell) => tell.is === 'ready'), 'the answer to be on its way');
    stop();
    ports[0]!.letThrough();
    await settle();
    expect(heard).toEqual([]);
    pool.start({ owner: 1, cell: square, given: { x: 4 } }, (news) => heard.push(news));
    await until(() => heard.length > 0, 'the next');
    expect(heard).toMatchObject([{ is: 'ready', value: 16 }]);
  });
  it('goes for all parts at once', async () => {
    gate.open = false;
    const { pool, ports } = pooled(2);
    const heard: News[] = [];
    const stop = pool.start({ owner: 1, cell: sum, given: { x: 5, y: 1 } }, (news) => heard.push(news));
    await settle();
    stop();
    heard.length = 0;
    gate.open = true;
    await settle();
    await until(() => ports.every((port) => port.told.at(-1)?.is !== 'waiting'), 'both workers to be free');
    expect(heard).toEqual([]);
    expect(ports.flatMap((port) => port.asked.filter((ask) => ask.do === 'part'))).toHaveLength(2);
  });
});

describe('a worker that dies', () => {
  it('leaves a fault in words for what it was doing, and another takes its place', async () => {
    gate.open = false;
    const { pool, ports } = pooled(1);
    const { live } = living(pool, [square]);
    await settle();
    ports[0]!.crash();
    expect(live.state(square)).toMatchObject({ is: 'fault' });
    const state = live.state(square);
    expect(state.is === 'fault' && say(state.fault.message, 'us')).toMatch(/^[A-Z].*background\.$/);
    expect(ports[0]!.terminated).toBe(true);
    gate.open = true;
    live.set(x, 6);
    live.run();
    await until(isReady(live, square), 'square by another worker');
    expect(ports).toHaveLength(2);
  });
  it('does not trouble the others, however often it says so', async () => {
    gate.open = false;
    const { pool, ports } = pooled(2);
    const heard: News[][] = [[], [], []];
    const start = (i: number): unknown =>
      pool.start({ owner: i, cell: square, given: { x: i } }, (news) => news.is !== 'waiting' && heard[i]!.push(news));
    start(0);
    start(1);
    start(2); // waits in the queue
    await settle();
    for (let i = 0; i < 3; i++) ports[0]!.crash();
    expect(heard.map((list) => list.length)).toEqual([1, 0, 0]);
    gate.open = true;
    await until(() => heard[1]!.length + heard[2]!.length === 2, 'the others');
    await settle();
    expect(heard.map((list) => list.map((news) => news.is))).toEqual([['fault'], ['ready'], ['ready']]);
    expect(ports.map((port) => port.terminated)).toEqual([true, false, false]);
    // Both places are still there for more work.
    gate.open = false;
    start(1);
    start(2);
    await settle();
    expect(ports).toHaveLength(3);
    expect(ports.slice(1).map((port) => port.asked.at(-1)!.do)).toEqual(['steps', 'steps']);
    gate.open = true;
    await settle();
  });
  it('with a part of something takes the whole of it', async () => {
    gate.open = false;
    const { pool, ports } = pooled(2);
    const { live } = living(pool, [sum]);
    live.set(x, 6);
    live.run();
    await settle();
    ports[0]!.crash();
    expect(live.state(sum)).toMatchObject({ is: 'fault' });
    gate.open = true;
    live.set(x, 5);
    live.run();
    await until(isReady(live, sum), 'the sum of five');
    expect(live.state(sum)).toEqual({ is: 'ready', value: 45 });
  });
  it('because it was asked for a cell it does not know is one that died', async () => {
    const stranger = slow({
      ...toy('stranger'),
      from: { x },
      *steps() {
        yield 0.5;
        return 1;
      },
    });
    const { pool, ports } = pooled(1);
    const heard: News[] = [];
    pool.start({ owner: 1, cell: stranger, given: { x: 1 } }, (news) => heard.push(news));
    await until(() => heard.length > 0, 'the fault');
    expect(heard).toMatchObject([{ is: 'fault' }]);
    expect(ports[0]!.terminated).toBe(true);
  });
});

it('two notebooks share one pool: each has its own values, and neither stops the other’s work', async () => {
  const { pool, ports } = pooled(2);
  const [one, two] = [living(pool, [half, sum]), living(pool, [half, sum])];
  one.live.set(x, 3);
  two.live.set(x, 10);
  for (const { live } of [one, two]) live.run();
  for (let i = 0; i < 5; i++) {
    one.live.set(y, i);
    one.live.run();
    await settle();
  }
  await until(() => [one, two].every(({ live }) => isReady(live, half)() && isReady(live, sum)()), 'both');
  expect([one, two].map(({ live }) => [live.state(half), live.state(sum)])).toEqual([
    [
      { is: 'ready', value: 4.5 },
      { is: 'ready', value: 24 },
    ],
    [
      { is: 'ready', value: 50 },
      { is: 'ready', value: 165 },
    ],
  ]);
  expect(ports.length).toBeLessThanOrEqual(2);
  one.live.close();
  two.live.set(x, 4);
  two.live.run();
  await until(isReady(two.live, half), 'the second after the first was closed');
});

describe('a sweep through a slow cell', () => {
  const item = (more: Partial<SweepItem>): SweepItem => ({
    id: 's',
    type: 'sweep',
    read: 'motoredPeak',
    vary: 'crankingSpeed',
    from: u.si(150, u.revolutionsPerMinute),
    to: u.si(300, u.revolutionsPerMinute),
    ...more,
  });
  /** The question with a few points only: each one is a whole compression. */
  const fewer = (store: Store, sweep: SweepItem): ReturnType<typeof questionOf> => ({
    ...questionOf(sweep, store.catalogue),
    xs: Array.from({ length: 4 }, (_, i) => sweep.from + ((sweep.to - sweep.from) * i) / 3),
  });
  type Last = Extract<Found<Answer<'sweep'>>, { readonly is: 'ready' | 'fault' }>;
  const swept = (pool: Pool, task: Task<'sweep'>): Promise<Last> =>
    new Promise((done) =>
      pool.explore('sweep', task, (news) => {
        if (news.is === 'ready' || news.is === 'fault') done(news);
      }),
    );
  const looking = [...quick, cellOf('motoredPeak')];

  it.each([
    ['an input', item({})],
    ['a family of lines', item({ family: { vary: 'ringLeakArea', values: [0, 1e-6] } })],
    ['something kept fixed', item({ fixed: { pressureEntry: 'standard' } })],
    ['the closing, by moving the cam', item({ vary: 'intakeClosing', from: 0.8, to: 1.3 })],
    ['a value held in a variant', item({ vary: 'clearanceVolume', from: 70e-6, to: 90e-6 })],
  ] as const)('against %s is, by a worker, what it is inline', async (_, sweep) => {
    const store = opened(scenario('two-cams'), 'late', looking);
    if (sweep.vary === 'clearanceVolume') store.hold(cellOf('clearanceVolume'), 80e-6, { what: 'hold' });
    const question = fewer(store, sweep);
    expect(isSlow(store.snapshot(), question)).toBe(true);
    const news = await swept(pooled(1, catalogue.cells).pool, taskOf(store, question));
    if (news.is !== 'ready') throw new Error(JSON.stringify(news));
    const inline = sweepNow(store.snapshot(), question);
    expect(news.result).toEqual(inline);
    expect(inline).toHaveLength(sweep.family?.values.length ?? 1);
    for (const [line] of inline) expect(new Set(line).size).toBe(4); // no flat lines
  });

  it('says at each point what the page says there', async () => {
    const store = opened(scenario('edge-of-premium'), null, looking);
    const question = fewer(store, item({}));
    const news = await swept(pooled(1, catalogue.cells).pool, taskOf(store, question));
    if (news.is !== 'ready') throw new Error(JSON.stringify(news));
    question.xs.forEach((at, i) => {
      store.set([[inputOf('crankingSpeed'), at]], { what: 'speed' });
      expect(news.result[0]![0]![i]).toBe(valueOf(store, 'motoredPeak'));
    });
  });

  it('that cannot be had says so in words', async () => {
    const store = opened({ ...scenario('edge-of-premium'), held: {} }); // no deck clearance
    const news = await swept(pooled(1, catalogue.cells).pool, taskOf(store, fewer(store, item({}))));
    if (news.is !== 'fault') throw new Error('it has an answer');
    expect(say(news.message, 'us')).toMatch(/^Give deck height/);
    const both = { ...fewer(store, item({})), fixed: [] };
    const task = { ...taskOf(store, both), held: { deckClearance: 0.0003 }, vary: 'intakeClosing' };
    const family = { vary: 'camAdvance', values: [0, 0.01] };
    const other = await swept(pooled(1, catalogue.cells).pool, { ...task, family });
    expect(other.is === 'fault' && say(other.message, 'us')).toMatch(
      /cannot be varied together: both move cam advance/,
    );
  });

  it('stopped in the middle says nothing more, and the worker goes on to the next', async () => {
    const store = opened(scenario('edge-of-premium'), null, quick);
    const { pool, ports } = pooled(1, catalogue.cells);
    const long = { ...questionOf(item({}), catalogue) };
    const heard: Found<Answer<'sweep'>>[] = [];
    const stop = pool.explore('sweep', taskOf(store, long), (news) => heard.push(news));
    await until(() => heard.length > 0, 'news');
    stop();
    heard.length = 0;
    const news = await swept(pool, taskOf(store, fewer(store, item({}))));
    expect(news.is).toBe('ready');
    expect(heard).toEqual([]);
    expect(ports).toHaveLength(1);
  });
});

it('a notebook on a pool comes to what it comes to inline', async () => {
  const { pool } = pooled(2, catalogue.cells);
  const document = scenario('milled-four');
  const store = new Store({ catalogue, open: { document, opened: document }, runner: pool });
  let calls = 0;
  store.watch([cellOf('motoredPeak'), cellOf('motoredPressure')], () => calls++);
  const before = store.revision;
  expect(store.state(cellOf('motoredPeak')).is).toBe('waiting');
  await until(() => store.state(cellOf('motoredPeak')).is === 'ready', 'the motored curve');
  expect(calls).toBeGreaterThan(0);
  expect(store.revision).toBeGreaterThan(before);
  const inline = opened(document, null, [cellOf('motoredPeak')]);
  for (const id of ['motoredPressure', 'motoredPeak']) expect(valueOf(store, id)).toEqual(valueOf(inline, id));
});

it('what crosses to a worker and back is plain data', () => {
  const document = scenario('milled-four');
  const store = opened(document, null, [...catalogue.cells.values()]);
  for (const c of catalogue.cells.values()) {
    const state = store.state(c);
    if (state.is !== 'ready') throw new Error(`${c.id} is ${state.is}`);
    expect(structuredClone(state.value), c.id).toEqual(state.value);
  }
});
