import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cell, cell, slow } from '../../src/graph/cell.ts';
import { Memory } from '../../src/graph/memory.ts';
import type { Document } from '../../src/notebook/document.ts';
import { Others } from '../../src/notebook/others.ts';
import { Store } from '../../src/notebook/store.ts';
import { HandRunner } from '../graph/hand-runner.ts';
import { toy, typed } from '../graph/toy.ts';
import { blank, catalogue, cellOf, inputOf, opened, quick, scenario } from './notebooks.ts';

const edit = { what: 'an edit' };

describe('the other variants of a notebook', () => {
  it('are what a notebook opened on them would be, after any edits', () => {
    const moves = ['bore', 'chamberVolume', 'intakeDuration', 'gasketThickness', 'altitude'] as const;
    const step = fc.oneof(
      fc.record({ set: fc.constantFrom(...moves), share: fc.double({ min: 0.1, max: 0.9, noNaN: true }) }),
      fc.record({ choose: fc.constantFrom('early', 'late', null) }),
      fc.constant('undo' as const),
      fc.constant('hold' as const),
      fc.constant('let go' as const),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 8 }), (steps) => {
        const store = opened(scenario('two-cams'));
        const others = new Others(store, { memory: new Memory() });
        for (const id of ['early', 'late']) others.watch(id, quick, () => {});
        for (const each of steps)
          if (each === 'undo') store.undo();
          else if (each === 'hold') store.hold(cellOf('clearanceVolume'), 88e-6, edit);
          else if (each === 'let go') store.letGo(cellOf('clearanceVolume'), edit);
          else if ('choose' in each) store.choose(each.choose);
          else {
            const [low, high] = inputOf(each.set).slider!;
            store.set([[inputOf(each.set), low + (high - low) * each.share]], edit);
          }
        for (const id of ['early', 'late']) {
          const fresh = opened(store.document, id);
          for (const c of quick) {
            const mine = others.state(id, c);
            const theirs = fresh.state(c);
            expect(mine.is, c.id).toBe(theirs.is);
            if (mine.is === 'ready' && theirs.is === 'ready') expect(mine.value, c.id).toEqual(theirs.value);
          }
        }
      }),
      { numRuns: 12 },
    );
  });
  it('are all but the one that is chosen, in order; there are none where there is only the notebook itself', () => {
    const store = opened(scenario('two-cams'), 'early');
    const others = new Others(store, { memory: new Memory() });
    const names = (): string[] => others.list.map((v) => v.name);
    expect(names()).toEqual(['Late cam']);
    store.choose('late');
    expect(names()).toEqual(['Early cam']);
    store.choose(null);
    expect(names()).toEqual(['Early cam', 'Late cam']);
    expect(new Others(opened(blank), { memory: new Memory() }).list).toEqual([]);
  });
});

/** Two variants over toys that count how often they are worked out. */
function toys() {
  const x = typed('x', 1);
  const y = typed('y', 10);
  const runs: number[] = [];
  const twice = cell({
    ...toy('twice'),
    from: { x },
    compute: ({ x }) => {
      runs.push(x);
      return 2 * x;
    },
  });
  const work = slow({
    ...toy('work'),
    from: { x },
    *steps({ x }) {
      yield 0.5;
      return x;
    },
  });
  const cells = new Map<string, Cell>([x, y, twice, work].map((c) => [c.id, c as Cell]));
  const variant = (id: string, x: number): Document['variants'][number] => ({ id, name: id, inputs: { x }, held: {} });
  const document: Document = {
    ...blank,
    inputs: {},
    held: {},
    tolerances: {},
    pins: [],
    page: [],
    variants: [variant('one', 1), variant('two', 2), variant('three', 3)],
    chosen: 'one',
  };
  const runner = new HandRunner();
  const memory = new Memory();
  const store = new Store({ catalogue: { ...catalogue, cells }, open: { document, opened: document }, runner, memory });
  return { x, y, twice, work, runs, runner, store, others: new Others(store, { runner, memory }) };
}

describe('of the other variants', () => {
  it('only what somebody looks at is worked out, and only when it changes', () => {
    const { store, others, x, y, twice, runs } = toys();
    let calls = 0;
    const stop = others.watch('two', [twice], () => calls++);
    expect(runs).toEqual([2]);
    expect(others.state('two', twice)).toEqual({ is: 'ready', value: 4 });
    calls = 0;
    store.set([[x, 5]], edit); // the chosen one's
    store.set([[y, 11]], edit);
    expect(runs).toEqual([2]);
    expect(calls).toBe(0);
    store.choose('two');
    store.set([[x, 7]], edit);
    expect(runs).toEqual([2, 7]);
    expect(calls).toBe(1);
    stop();
    store.set([[x, 8]], edit);
    expect(runs).toEqual([2, 7]);
    expect(others.state('two', twice)).toMatchObject({ is: 'waiting', last: 14 });
    expect(runs).toEqual([2, 7]);
    others.watch('two', [twice], () => {});
    expect(runs).toEqual([2, 7, 8]);
  });
  it('who looks at more before looking away from less is told on', () => {
    const { store, others, x, twice, y } = toys();
    let calls = 0;
    const call = (): number => calls++;
    const before = others.watch('two', [twice], call);
    others.watch('two', [twice, y], call);
    before();
    calls = 0;
    store.choose('two');
    store.set([[x, 7]], edit);
    expect(calls).toBe(1);
    expect(others.state('two', twice)).toEqual({ is: 'ready', value: 14 });
  });
  it('slow work goes behind that of the chosen one, and is stopped when nobody looks or the variant is gone', () => {
    const { store, others, work, runner } = toys();
    store.watch([work], () => {});
    const stop = others.watch('two', [work], () => {});
    others.watch('three', [work], () => {});
    expect(runner.jobs.map((job) => [job.given.x, job.isOther])).toEqual([
      [1, false],
      [2, true],
      [3, true],
    ]);
    expect(others.busy).toBe(true);
    stop();
    expect(runner.jobs.map((job) => job.stopped)).toEqual([false, true, false]);
    store.change(edit, (draft) => void draft.variants.pop());
    expect(runner.jobs.map((job) => job.stopped)).toEqual([false, true, true]);
    expect(others.busy).toBe(false);
  });
  it('what one has come to is not worked out again for another, nor when it is chosen', () => {
    const { store, others, work, runner, x } = toys();
    const heard: unknown[] = [];
    others.watch('two', [work], () => heard.push(others.state('two', work)));
    runner.last.answer(2);
    expect(heard.at(-1)).toEqual({ is: 'ready', value: 2 });
    store.choose('two');
    store.watch([work], () => {});
    expect(store.state(work)).toEqual({ is: 'ready', value: 2 });
    store.choose('three');
    store.set([[x, 2]], edit);
    expect(store.state(work)).toEqual({ is: 'ready', value: 2 });
    expect(runner.jobs.map((job) => job.given.x)).toEqual([2, 3]);
  });
  it('a what-if can be asked for without anybody looking', () => {
    const { others, twice, runs } = toys();
    const at = others.snapshot('three');
    expect(runs).toEqual([]);
    expect(at.state(at.graph.slotOf.get(twice)!)).toEqual({ is: 'ready', value: 6 });
  });
});
