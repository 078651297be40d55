import { describe, expect, it } from 'vitest';
import { cell, drain, shareOf, slow, slowInParts, type Cell, type Steps } from '../../src/graph/cell.ts';
import { curve } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';
import { inline, type Runner } from '../../src/graph/runner.ts';
import { Impossible } from '../../src/graph/state.ts';
import { factor, rotation } from '../../src/units/quantity.ts';
import { HandRunner } from './hand-runner.ts';
import { toy, typed } from './toy.ts';

const a = typed('a', 2, { hard: [-100, 100] });
const b = typed('b', 3);
const work = slow({
  ...toy('work'),
  from: { a },
  *steps({ a }) {
    yield 0.5;
    if (a < 0) throw new Impossible(['There is no work below nothing.'], 'a');
    return a * 100;
  },
});
const mixed = cell({ ...toy('mixed'), from: { work, b }, compute: ({ work, b }) => work + b });
const onward = slow({
  ...toy('onward'),
  from: { mixed },
  *steps({ mixed }) {
    yield 0.5;
    return mixed * 2;
  },
});

function bench(...cells: Cell[]) {
  const runner = new HandRunner();
  const news: string[][] = [];
  const live = new Live(cells, { runner, onNews: (changed) => news.push(changed.map((c) => c.id)) });
  const unlook = live.look(cells);
  live.run();
  return { live, runner, news, unlook };
}

describe('a slow cell', () => {
  it('waits, tells of its progress, settles, then wakes its readers', () => {
    const { live, runner, news } = bench(mixed);
    expect(live.ran).toEqual(['work']);
    expect(live.busy).toBe(true);
    expect(runner.last.given).toEqual({ a: 2 });
    expect(live.state(mixed)).toEqual({ is: 'waiting', last: undefined, done: 0 });
    runner.last.progress(0.5);
    expect(live.state(work)).toEqual({ is: 'waiting', last: undefined, done: 0.5 });
    expect(live.state(mixed)).toEqual({ is: 'waiting', last: undefined, done: 0 });
    runner.last.progress(0.5); // no news
    runner.last.answer(200);
    expect(live.state(work)).toEqual({ is: 'ready', value: 200 });
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 203 });
    expect(live.busy).toBe(false);
    expect(news).toEqual([['work'], ['work', 'mixed']]);
  });

  it('is stopped by a newer input, and keeps the last good value until the new one', () => {
    const { live, runner } = bench(mixed);
    runner.last.answer(200);
    live.set(a, 4);
    live.run();
    live.set(a, 7);
    live.run();
    expect(runner.jobs.map((job) => job.stopped || job.ended)).toEqual([true, true, false]);
    expect(runner.last.given).toEqual({ a: 7 });
    expect(live.state(work)).toEqual({ is: 'waiting', last: 200, done: 0 });
    expect(live.state(mixed)).toEqual({ is: 'waiting', last: 203, done: 0 });
  });

  it('is never mixed with a newer value of another input', () => {
    const { live, runner } = bench(mixed);
    runner.last.answer(200);
    live.set(a, 4);
    live.set(b, 9);
    live.run();
    expect(live.state(mixed)).toEqual({ is: 'waiting', last: 203, done: 0 }); // not 209
    runner.last.answer(400);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 409 });
  });

  it('drops whatever a stopped job still says', () => {
    const { live, runner, news } = bench(mixed);
    const late = runner.last;
    live.set(a, 4);
    live.run();
    late.progress(0.9);
    late.provisional(150, 0.9);
    late.answer(200);
    expect(live.state(work)).toEqual({ is: 'waiting', last: undefined, done: 0 });
    expect(news).toEqual([]);
    runner.last.answer(400);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 403 });
    late.report({ is: 'fault', fault: { at: 'work', about: 'work', message: ['Late.'] } });
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 403 });
  });

  it('is not heard again once it has given its value', () => {
    const { live, runner } = bench(mixed);
    runner.last.answer(200);
    runner.last.progress(0.3);
    runner.last.provisional(1, 0.3);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 203 });
    const old = runner.last;
    live.set(a, 4);
    live.run();
    old.answer(200);
    expect(live.state(work)).toEqual({ is: 'waiting', last: 200, done: 0 });
  });

  it('that is idle is worked on, but keeps nobody waiting', () => {
    const spare = slow({
      ...toy('spare'),
      from: { a },
      idle: true,
      *steps({ a }) {
        yield 0.5;
        return a;
      },
    });
    const { live, runner } = bench(spare, work);
    expect(runner.running.map((job) => job.cell.id).toSorted()).toEqual(['spare', 'work']);
    expect(live.busy).toBe(true);
    runner.running.find((job) => job.cell === work)!.answer(200);
    expect(live.busy).toBe(false);
    live.set(a, 3);
    live.run();
    expect(runner.running.map((job) => job.given)).toEqual([{ a: 3 }, { a: 3 }]);
    for (const job of runner.running) job.answer(job.given['a']);
    expect(live.state(spare)).toEqual({ is: 'ready', value: 3 });
  });

  it('does not start again when an unrelated input moves', () => {
    const { live, runner } = bench(mixed);
    live.set(b, 9);
    live.run();
    expect(runner.jobs).toHaveLength(1);
    expect(runner.last.stopped).toBe(false);
    runner.last.answer(200);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 209 });
    live.set(b, 10);
    live.run();
    expect(runner.jobs).toHaveLength(1);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 210 });
  });

  it('works on when an input goes away and comes back before the next run', () => {
    const { live, runner } = bench(mixed);
    live.set(a, 4);
    live.set(a, 2);
    live.run();
    expect(runner.jobs).toHaveLength(1);
    expect(runner.last.stopped).toBe(false);
  });

  it('that answers before an edit has been run is not taken for the answer to the edit', () => {
    const { live, runner, news } = bench(mixed);
    live.set(a, 4);
    runner.jobs[0]!.answer(200);
    expect(live.state(work)).toMatchObject({ is: 'waiting', done: 0 });
    expect(live.state(mixed)).toMatchObject({ is: 'waiting' });
    expect(news).toEqual([['a', 'work']]);
    expect(runner.last.given).toEqual({ a: 4 });
    runner.last.answer(400);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 403 });
  });

  it('starts only when all it reads is settled', () => {
    const { live, runner } = bench(onward);
    expect(live.ran).toEqual(['work']);
    runner.last.answer(200);
    expect(runner.last.cell).toBe(onward);
    expect(runner.last.given).toEqual({ mixed: 203 });
    live.set(a, 4);
    live.run();
    expect(runner.running.map((job) => job.cell.id)).toEqual(['work']);
    expect(live.state(onward)).toEqual({ is: 'waiting', last: undefined, done: 0 });
  });

  it('is left alone while something it reads is at fault, and its job with it', () => {
    const { live, runner } = bench(mixed);
    live.set(a, 101);
    live.run();
    expect(runner.running).toEqual([]);
    expect(live.busy).toBe(false);
    expect(live.state(mixed)).toMatchObject({ is: 'fault', fault: { at: 'a' } });
    live.set(a, 2);
    live.run();
    expect(runner.jobs).toHaveLength(2);
    runner.last.answer(200);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 203 });
  });

  it('lets no figure out that is none', () => {
    const { live, runner } = bench(mixed);
    runner.last.answer(NaN);
    expect(live.state(mixed)).toMatchObject({ is: 'fault', fault: { at: 'work' } });
    live.set(a, 4);
    live.run();
    runner.last.provisional(Infinity, 0.5); // not yet: it may still find its way
    expect(live.state(work)).toMatchObject({ is: 'waiting', done: 0.5 });
    runner.last.answer(400);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 403 });
  });

  it('passes on the fault its runner reports, and heals with the next input', () => {
    const { live, runner } = bench(mixed);
    const fault = { at: 'work', about: 'a', message: ['No.'] };
    runner.last.report({ is: 'fault', fault });
    expect(live.state(mixed)).toEqual({ is: 'fault', last: undefined, fault });
    expect(live.busy).toBe(false);
    live.set(a, 3);
    live.run();
    runner.last.answer(300);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 303 });
  });

  it('is not run while it is held, and takes up its work when it is let go', () => {
    const { live, runner } = bench(mixed);
    live.hold(work, 50);
    live.run();
    expect(runner.running).toEqual([]);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 53 });
    runner.jobs[0]!.answer(200);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 53 });
    live.set(a, 4);
    live.run();
    expect(runner.jobs).toHaveLength(1);
    live.release(work);
    live.run();
    expect(runner.last.given).toEqual({ a: 4 });
    expect(live.state(mixed)).toMatchObject({ is: 'waiting', last: 53 });
  });
});

describe('a provisional value', () => {
  it('is of the present inputs: quick readers compute from it and are coming too', () => {
    const { live, runner, news } = bench(mixed);
    runner.last.provisional(190, 0.5);
    expect(live.state(work)).toEqual({ is: 'coming', value: 190, done: 0.5 });
    expect(live.state(mixed)).toEqual({ is: 'coming', value: 193, done: 0.5 });
    expect(news).toEqual([['work', 'mixed']]);
    runner.last.progress(0.75);
    expect(live.state(work)).toEqual({ is: 'coming', value: 190, done: 0.75 });
    expect(live.ran, 'progress alone makes nobody compute').toEqual([]);
    live.set(b, 5);
    live.run();
    expect(live.state(mixed)).toEqual({ is: 'coming', value: 195, done: 0.75 });
    runner.last.answer(200);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 205 });
  });

  it('is not good enough for a slow reader to start from', () => {
    const { live, runner } = bench(onward);
    runner.last.provisional(190, 0.5);
    expect(live.state(mixed)).toMatchObject({ is: 'coming', value: 193 });
    expect(live.state(onward)).toEqual({ is: 'waiting', last: undefined, done: 0 });
    expect(runner.jobs).toHaveLength(1);
  });

  it('is provisional to its readers even when it says that all is done', () => {
    const { live, runner } = bench(onward);
    runner.last.provisional(190, 1);
    expect(live.state(mixed)).toEqual({ is: 'coming', value: 193, done: 1 });
    expect(runner.jobs).toHaveLength(1);
  });

  it('that turns out to be the value makes its readers ready', () => {
    const { live, runner } = bench(mixed);
    runner.last.provisional(200, 0.5);
    runner.last.answer(200);
    expect(live.state(work)).toEqual({ is: 'ready', value: 200 });
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 203 });
  });

  it('goes with its inputs: of newer inputs there is none yet', () => {
    const { live, runner } = bench(mixed);
    runner.last.provisional(190, 0.5);
    live.set(a, 4);
    live.run();
    expect(live.state(work)).toEqual({ is: 'waiting', last: 190, done: 0 });
    expect(live.state(mixed)).toEqual({ is: 'waiting', last: 193, done: 0 });
  });

  it('is not carried over to newer inputs by a runner that speaks while it starts', () => {
    const prompt: Runner = {
      start(job, report) {
        report({ is: 'waiting', done: 0.1 });
        return by.start(job, report);
      },
    };
    const by = new HandRunner();
    const live = new Live([mixed], { runner: prompt });
    live.look([mixed]);
    live.run();
    expect(live.state(work)).toEqual({ is: 'waiting', last: undefined, done: 0.1 });
    by.last.provisional(190, 0.5);
    live.set(a, 4);
    live.run();
    expect(live.state(work)).toEqual({ is: 'waiting', last: 190, done: 0.1 });
    expect(live.state(mixed)).toMatchObject({ is: 'waiting' });
  });

  it('may come at once, and is not lost by the progress after it', () => {
    const prompt: Runner = {
      start(_, report) {
        report({ is: 'coming', value: 190, done: 0.1 });
        report({ is: 'waiting', done: 0.2 });
        return () => {};
      },
    };
    const live = new Live([mixed], { runner: prompt });
    live.look([mixed]);
    live.run();
    expect(live.state(work)).toEqual({ is: 'coming', value: 190, done: 0.2 });
    expect(live.state(mixed)).toEqual({ is: 'coming', value: 193, done: 0.2 });
  });

  it('of which a reader can make nothing leaves the reader waiting, not at fault', () => {
    const picky = cell({
      ...toy('picky'),
      from: { work },
      compute: ({ work }) => {
        if (work < 195) throw new Impossible(['Too little to go by.']);
        return work;
      },
    });
    const { live, runner } = bench(picky);
    runner.last.provisional(190, 0.5);
    expect(live.state(picky)).toEqual({ is: 'waiting', last: undefined, done: 0.5 });
    runner.last.provisional(196, 0.6);
    expect(live.state(picky)).toEqual({ is: 'coming', value: 196, done: 0.6 });
    runner.last.answer(194);
    expect(live.state(picky)).toMatchObject({ is: 'fault', last: 196, fault: { at: 'picky' } });
  });

  it('makes what a held cell would be provisional as well', () => {
    const { live, runner } = bench(mixed);
    live.hold(mixed, 1);
    live.run();
    expect(live.computed(mixed)).toEqual({ is: 'waiting', last: undefined, done: 0 });
    runner.last.provisional(190, 0.5);
    expect(live.computed(mixed)).toEqual({ is: 'coming', value: 193, done: 0.5 });
    runner.last.answer(200);
    expect(live.computed(mixed)).toEqual({ is: 'ready', value: 203 });
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 1 });
  });
});

describe('memory', () => {
  it('brings back the result of inputs it has seen, without a job', () => {
    const { live, runner } = bench(mixed);
    runner.last.answer(200);
    live.set(a, 4);
    live.run();
    runner.last.answer(400);
    live.set(a, 2); // undo
    live.run();
    expect(runner.jobs).toHaveLength(2);
    expect(live.busy).toBe(false);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 203 });
  });

  it('stops the job that is no longer wanted when it remembers', () => {
    const { live, runner } = bench(mixed);
    runner.last.answer(200);
    live.set(a, 4);
    live.run();
    live.set(a, 2);
    live.run();
    expect(runner.running).toEqual([]);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 203 });
  });

  it('keeps no provisional value and no fault', () => {
    const { live, runner } = bench(mixed);
    runner.last.provisional(190, 0.5);
    live.set(a, 4);
    live.run();
    runner.last.report({ is: 'fault', fault: { at: 'work', about: 'work', message: ['No.'] } });
    live.set(a, 2);
    live.run();
    live.set(a, 4);
    live.run();
    expect(runner.jobs).toHaveLength(4);
  });

  it('tells results apart by curves as well as by figures', () => {
    const xs = cell({
      ...toy('xs'),
      kind: curve(factor, factor),
      from: { a },
      compute: ({ a }) => ({ x: Float64Array.of(0, 1), y: Float64Array.of(0, a) }),
    });
    const area = slow({
      ...toy('area'),
      from: { xs },
      *steps({ xs }) {
        yield 0.5;
        return xs.y[1]! / 2;
      },
    });
    const { live, runner } = bench(area);
    runner.last.answer(1);
    live.set(a, 3);
    live.run();
    expect(live.state(area)).toMatchObject({ is: 'waiting' });
    runner.last.answer(1.5);
    live.set(a, 2);
    live.run();
    expect(runner.jobs).toHaveLength(2);
    expect(live.state(area)).toEqual({ is: 'ready', value: 1 });
  });

  it('forgets the oldest of very many', () => {
    const { live, runner } = bench(work);
    for (let i = 0; i < 100; i++) {
      live.set(a, i);
      live.run();
      runner.last.answer(100 * i);
    }
    const started = runner.jobs.length;
    live.set(a, 98);
    live.run();
    expect(runner.jobs).toHaveLength(started);
    live.set(a, 0);
    live.run();
    expect(runner.jobs).toHaveLength(started + 1);
  });
});

describe('a slow cell the reader stops', () => {
  it('waits, marked as stopped, and says how far it had come', () => {
    const { live, runner } = bench(mixed);
    runner.last.progress(0.4);
    expect(live.stop(work).map((c) => c.id)).toEqual(['work']);
    expect(runner.running).toEqual([]);
    expect(live.busy).toBe(false);
    expect(live.state(work)).toEqual({ is: 'waiting', last: undefined, done: 0.4, stopped: true });
    live.set(b, 9);
    live.run();
    expect(runner.jobs).toHaveLength(1);
  });

  it('takes its provisional value back, as a last good one', () => {
    const { live, runner } = bench(mixed);
    runner.last.provisional(190, 0.5);
    expect(live.stop(work).map((c) => c.id)).toEqual(['work', 'mixed']);
    expect(live.state(work)).toEqual({ is: 'waiting', last: 190, done: 0.5, stopped: true });
    expect(live.state(mixed)).toEqual({ is: 'waiting', last: 193, done: 0 });
  });

  it('goes on when the reader wants it to', () => {
    const { live, runner } = bench(mixed);
    live.stop(work);
    expect(live.resume(work).map((c) => c.id)).toEqual(['work']);
    expect(runner.running).toHaveLength(1);
    runner.last.answer(200);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 203 });
    expect(live.resume(work)).toEqual([]);
  });

  it('starts with the next change of what it reads', () => {
    const { live, runner } = bench(mixed);
    live.stop(work);
    live.set(a, 4);
    live.run();
    expect(runner.running.map((job) => job.given)).toEqual([{ a: 4 }]);
  });

  it('is not robbed of a change that has not been run yet', () => {
    const { live, runner } = bench(mixed);
    runner.last.answer(200);
    live.set(a, 4);
    live.stop(work); // it is not at work: nothing to stop
    live.run();
    expect(live.state(work)).toMatchObject({ is: 'waiting', last: 200 });
    expect(runner.last.given).toEqual({ a: 4 });
  });

  it('tells of an edit that was made meanwhile, and names each cell once', () => {
    const { live } = bench(mixed);
    live.set(b, 9);
    expect(live.stop(work).map((c) => c.id)).toEqual(['work', 'b']);
  });
});

describe('a slow cell nobody looks at', () => {
  it('is stopped, and starts again when someone looks', () => {
    const { live, runner, unlook } = bench(mixed);
    unlook();
    expect(runner.running).toEqual([]);
    runner.last.answer(200);
    expect(live.state(work)).toMatchObject({ is: 'waiting' });
    live.look([mixed]);
    live.run();
    expect(runner.running).toHaveLength(1);
    runner.last.answer(200);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 203 });
  });

  it('is not stopped while someone else looks', () => {
    const { live, runner, unlook } = bench(mixed);
    live.look([work]);
    unlook();
    expect(runner.running).toHaveLength(1);
  });

  it('keeps its value when nothing changed meanwhile', () => {
    const { live, runner, unlook } = bench(mixed);
    runner.last.answer(200);
    unlook();
    live.run();
    live.look([mixed]);
    live.run();
    expect(runner.jobs).toHaveLength(1);
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 203 });
  });
});

it('a graph that is closed stops all its jobs', () => {
  const { live, runner } = bench(mixed);
  live.close();
  expect(runner.running).toEqual([]);
  runner.last.answer(200);
  expect(live.state(work)).toMatchObject({ is: 'waiting' });
});

describe('a slow cell in parts', () => {
  const speeds = [1000, 2000, 3000, 4000];
  const torque = slowInParts({
    ...toy('torque'),
    kind: curve(rotation, factor),
    from: { a },
    parts: {
      list: () => speeds,
      *one({ a }, speed): Steps<number> {
        yield 0.5;
        if (a > 90 && speed > 2500) throw new Impossible(['Too fast.'], 'a');
        return a * speed;
      },
      join: (_, results) => {
        const done = speeds.flatMap((speed, i) => (results[i] === undefined ? [] : [[speed, results[i]] as const]));
        return done.length < 2
          ? undefined
          : { x: Float64Array.from(done, ([x]) => x), y: Float64Array.from(done, ([, y]) => y) };
      },
    },
  });
  const peak = cell({ ...toy('peak'), from: { torque }, compute: ({ torque }) => Math.max(...torque.y) });

  it('takes them one after another, and shows what is there as soon as it shows something', () => {
    const steps = [...torque.steps({ a: 2 } as never)];
    expect(steps.map(shareOf)).toEqual([0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1]);
    const shown = steps.map((step) => (typeof step === 'number' ? null : [...(step.value as { y: Float64Array }).y]));
    expect(shown).toEqual([null, null, null, [2000, 4000], null, [2000, 4000, 6000], null, null]);
    expect(drain(torque.steps({ a: 2 } as never))).toEqual({
      x: Float64Array.from(speeds),
      y: Float64Array.of(2000, 4000, 6000, 8000),
    });
  });

  it('gives a partial join of the present inputs to its readers as coming', () => {
    const { live, runner } = bench(peak);
    for (const step of torque.steps({ a: 2 } as never))
      if (typeof step === 'number') runner.last.progress(step);
      else {
        runner.last.provisional(step.value, step.done);
        expect(live.state(peak)).toEqual({
          is: 'coming',
          value: Math.max(...step.value.y),
          done: step.done,
        });
      }
    runner.last.answer(drain(torque.steps({ a: 2 } as never)));
    expect(live.state(peak)).toEqual({ is: 'ready', value: 8000 });
  });

  it('is at fault when one of its parts is', () => {
    const live = new Live([peak]);
    live.look([peak]);
    live.set(a, 95);
    live.run();
    expect(live.state(peak)).toEqual({
      is: 'fault',
      last: undefined,
      fault: { at: 'torque', about: 'a', message: ['Too fast.'] },
    });
  });

  it('says so where there is nothing to join', () => {
    const none = slowInParts({
      ...toy('none'),
      from: { a },
      parts: {
        list: (): number[] => [],
        *one(): Steps<number> {
          yield 0;
          return 0;
        },
        join: () => undefined,
      },
    });
    const live = new Live([none]);
    live.look([none]);
    live.run();
    expect(live.state(none)).toMatchObject({ is: 'fault', fault: { at: 'none' } });
  });
});

describe('run at once, without a worker', () => {
  it('a slow cell is ready after the run', () => {
    const live = new Live([onward]);
    live.look([onward]);
    live.run();
    expect(live.ran).toEqual(['work', 'mixed', 'onward']);
    expect(live.state(onward)).toEqual({ is: 'ready', value: 406 });
    expect(live.busy).toBe(false);
  });

  it('an error in its steps is a fault of the cell, about what it names', () => {
    const live = new Live([mixed], { runner: inline });
    live.look([mixed]);
    live.set(a, -1);
    live.run();
    const fault = { at: 'work', about: 'a', message: ['There is no work below nothing.'] };
    expect(live.state(mixed)).toEqual({ is: 'fault', last: undefined, fault });
    live.set(a, 1);
    live.run();
    expect(live.state(mixed)).toEqual({ is: 'ready', value: 103 });
  });
});

describe('two live graphs on one runner with a single seat', () => {
  /** Works on one job at a time; a job with the same owner and cell takes the place of the older one. */
  class Seat implements Runner {
    private queue: { readonly key: string; readonly go: () => void }[] = [];
    readonly log: string[] = [];
    start({ owner, cell, given }: Parameters<Runner['start']>[0], report: Parameters<Runner['start']>[1]): () => void {
      const key = `${owner} ${cell.id}`;
      const go = (): void => report({ is: 'ready', value: drain(cell.steps(given as never)) });
      this.queue = [...this.queue.filter((job) => job.key !== key), { key, go }];
      return () => {
        this.queue = this.queue.filter((job) => job.go !== go);
      };
    }
    work(): void {
      for (let job = this.queue.shift(); job; job = this.queue.shift()) {
        this.log.push(job.key);
        job.go();
      }
    }
  }

  it('both come to an end, each with its own figures', () => {
    const runner = new Seat();
    const [one, two] = [new Live([onward], { runner }), new Live([onward], { runner })];
    for (const live of [one, two]) live.look([onward]);
    two.set(a, 5);
    one.run();
    two.run();
    runner.work();
    expect(one.state(onward)).toEqual({ is: 'ready', value: 406 });
    expect(two.state(onward)).toEqual({ is: 'ready', value: 1006 });
    expect(runner.log).toHaveLength(4);
  });
});
