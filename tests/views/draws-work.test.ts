import { describe, expect, it, vi } from 'vitest';
import type { DrawsResult } from '../../src/graph/draws.ts';
import type { DrawsAsked, Explorer, Found } from '../../src/graph/explorer.ts';
import type { DrawsItem } from '../../src/notebook/document.ts';
import { drawsQuestion } from '../../src/notebook/draws.ts';
import type { Store } from '../../src/notebook/store.ts';
import { DrawsWork } from '../../src/views/draws-work.ts';
import { example, inputOf, opened } from '../notebook/notebooks.ts';

interface Job {
  readonly kind: string;
  readonly asked: DrawsAsked;
  readonly isUrgent: boolean | undefined;
  stopped: boolean;
  readonly tell: (news: Found<never>) => void;
}
/** An explorer driven by hand. */
class Hands implements Explorer {
  readonly jobs: Job[] = [];
  readonly explore: Explorer['explore'] = (kind, asked, report, isUrgent) => {
    const job: Job = { kind, asked: asked as never, isUrgent, stopped: false, tell: report };
    this.jobs.push(job);
    return () => void (job.stopped = true);
  };
  get draws(): readonly Job[] {
    return this.jobs.filter((job) => job.kind === 'draws');
  }
  get last(): Job {
    return this.draws.at(-1)!;
  }
}
const found = (...samples: number[]): DrawsResult =>
  ['result', 'here', 'low'].map(() => ({ here: 0, samples: Float64Array.from(samples), words: {}, why: null }));
const coming = (done: number, ...samples: number[]) => ({ is: 'coming', done, result: found(...samples) }) as never;
const ready = (...samples: number[]) => ({ is: 'ready', result: found(...samples) }) as never;

function begun(item: Partial<DrawsItem> = {}) {
  const [store, hands, changed] = [opened(example), new Hands(), vi.fn()];
  const work = new DrawsWork(changed);
  const seek = (more: Partial<DrawsItem> = {}, isAtRest = true, of: Store = store): void =>
    work.seek(
      of,
      drawsQuestion(of, { id: 'd', type: 'draws', read: 'dynamicRatio', ...item, ...more }),
      hands,
      isAtRest,
    );
  const move = (cm3: number): void => store.set([[inputOf('chamberVolume'), cm3 * 1e-6]], { what: 'chamber' });
  return { store, hands, work, seek, move, changed };
}

describe('the work on quick draws', () => {
  it('goes before what is slow, is begun once for each question, and told when something is known', () => {
    const { hands, seek, changed, work } = begun();
    seek();
    seek();
    expect(hands.jobs).toHaveLength(1);
    expect(hands.last.isUrgent).toBe(true);
    hands.last.tell(ready(1, 2));
    expect(changed).toHaveBeenCalledTimes(1);
    expect([...work.draws.result![0]!.samples]).toEqual([1, 2]);
    seek();
    expect(hands.jobs).toHaveLength(1);
  });
  it('is let come to its end while a hand moves, so that something is seen, unless it takes long', () => {
    const now = vi.spyOn(performance, 'now').mockReturnValue(1000);
    const { hands, seek, move } = begun();
    seek();
    move(69);
    now.mockReturnValue(1100);
    seek({}, false);
    expect(hands.jobs).toHaveLength(1);
    hands.last.tell(ready(1));
    seek({}, false);
    expect(hands.jobs).toHaveLength(2);
    move(68);
    now.mockReturnValue(1500);
    seek({}, false);
    expect(hands.jobs.map((job) => job.stopped)).toEqual([false, true, false]);
    now.mockRestore();
  });
  it('is not begun again where it has failed, until something changes', () => {
    const { hands, seek, move, work } = begun();
    seek();
    hands.last.tell({ is: 'fault', message: ['No.'] });
    seek();
    expect([hands.jobs.length, work.draws.fault]).toEqual([1, ['No.']]);
    move(69);
    seek();
    expect([hands.jobs.length, work.draws.fault]).toEqual([2, null]);
  });
  it('forgets what it found of another result', () => {
    const { hands, seek, work } = begun();
    work.about('one');
    seek();
    hands.last.tell(ready(1));
    work.about('one');
    expect(work.draws.result).not.toBeNull();
    work.about('other');
    expect(work.draws.result).toBeNull();
    seek();
    expect(hands.jobs).toHaveLength(2);
  });
});

describe('the work on slow draws', () => {
  const slow = { read: 'peakPower', seconds: 20 };
  it('begins once hands rest, with what moves it beside it, and takes the time it is given', () => {
    const { hands, seek, work } = begun(slow);
    seek({}, false);
    expect(hands.jobs).toEqual([]);
    seek();
    seek();
    expect(hands.jobs.map((job) => job.kind).toSorted()).toEqual(['draws', 'shares']);
    expect(hands.last.asked).toMatchObject({ from: 0, seconds: 20 });
    hands.last.tell(coming(0.25, 1, 2, 3));
    expect(work.elapsed).toBe(5);
    hands.last.tell(ready(1, 2, 3, 4));
    expect(work.elapsed).toBe(20);
    seek();
    expect(hands.draws).toHaveLength(1);
  });
  it('stays stopped, and goes on after the draws it has, for the time that is left', () => {
    const { hands, seek, work } = begun(slow);
    seek();
    hands.last.tell(coming(0.25, 1, 2, 3));
    work.stop();
    expect(hands.jobs.every((job) => job.stopped)).toBe(true);
    seek();
    expect([hands.draws.length, work.elapsed, work.isRunning]).toEqual([1, 5, false]);
    work.goOn();
    seek();
    expect(hands.last.asked).toMatchObject({ from: 3, seconds: 15 });
    hands.last.tell(coming(0.2, 4));
    expect(work.elapsed).toBe(8);
    expect([...work.draws.result![0]!.samples]).toEqual([1, 2, 3, 4]);
    hands.last.tell(ready(4, 5));
    expect([...work.draws.result![0]!.samples]).toEqual([1, 2, 3, 4, 5]);
  });
  it('takes more time when it is given more, also while it runs, and no less than it took', () => {
    const { hands, seek, work } = begun(slow);
    seek();
    hands.last.tell(coming(0.5, 1, 2));
    seek({ seconds: 60 });
    expect(hands.draws.map((job) => job.stopped)).toEqual([true, false]);
    expect(hands.last.asked).toMatchObject({ from: 2, seconds: 50 });
    hands.last.tell(ready(3));
    seek({ seconds: 10 });
    expect([hands.draws.length, work.elapsed]).toEqual([2, 60]);
    seek({ seconds: 90 });
    expect(hands.last.asked).toMatchObject({ from: 3, seconds: 30 });
  });
  it('begins anew when the engine changes, even if it was stopped, and goes on when something else does', () => {
    const { hands, seek, move, work, store } = begun(slow);
    seek();
    hands.last.tell(coming(0.5, 1, 2));
    store.set([[inputOf('squishAluminum'), 0.0011]], { what: 'elsewhere' });
    seek({}, false);
    expect([hands.draws.length, hands.last.stopped]).toEqual([1, false]);
    work.stop();
    move(69);
    seek({}, false);
    expect(hands.draws).toHaveLength(1);
    seek();
    expect(hands.last.asked).toMatchObject({ from: 0, seconds: 20 });
    expect(work.elapsed).toBe(0);
    hands.last.tell(coming(0.1, 9));
    expect([...work.draws.result![0]!.samples]).toEqual([9]);
  });
});
