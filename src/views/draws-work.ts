import type { Explorer } from '../graph/explorer.ts';
import { usualDraws } from '../notebook/document.ts';
import { type DrawsQuestion, drawsTask, joined, sharesTask } from '../notebook/draws.ts';
import type { Store } from '../notebook/store.ts';
import { Work } from './work.ts';

const patience = 300; // ms: quick work that began less than this ago is let come to its end
const worthIt = 0.5; // s: for less time nothing slow is begun

/**
 * The work behind a figure of draws. Quick draws follow the hand, one lot after another. Slow ones begin once it rests
 * and end with the time they are given; they can be stopped and go on, and more time adds to what is drawn already.
 */
export class DrawsWork {
  readonly draws: Work<'draws'>;
  readonly shares: Work<'shares'>;
  isStopped = false;
  /** s that slow draws took before the task that runs, and that it may take. */
  private before = 0;
  private limit = 0;
  private results = '';

  constructor(changed: () => void) {
    this.draws = new Work('draws', changed, joined);
    this.shares = new Work('shares', changed);
  }
  get isRunning(): boolean {
    return this.draws.isRunning || this.shares.isRunning;
  }
  /** s that slow draws have taken. */
  get elapsed(): number {
    return this.before + this.draws.done * this.limit;
  }
  /** What was found for other results than these is none of theirs. */
  about(results: string): void {
    if (results === this.results) return;
    this.results = results;
    this.halt();
    this.draws.forget();
    this.shares.forget();
  }
  /** Sees to it that what is asked is worked on. */
  seek(store: Store, question: DrawsQuestion, explorer: Explorer, isAtRest: boolean): void {
    if (question.isSlow) this.seekSlowly(store, question, explorer, isAtRest);
    else this.seekAtOnce(store, question, explorer);
  }
  private seekAtOnce(store: Store, question: DrawsQuestion, explorer: Explorer): void {
    const { draws } = this;
    const task = drawsTask(store, question);
    const key = JSON.stringify(task);
    if (draws.key === key && (draws.isRunning || draws.isWhole || draws.fault)) return;
    if (draws.isRunning && performance.now() - draws.began < patience) return; // it is looked at again when it ends
    draws.start(explorer, { key, task, isUrgent: true });
  }
  private seekSlowly(store: Store, question: DrawsQuestion, explorer: Explorer, isAtRest: boolean): void {
    const { draws } = this;
    const key = JSON.stringify(drawsTask(store, { ...question, item: { ...question.item, seconds: 0 } }));
    if (draws.key !== key) {
      this.halt();
      if (!isAtRest) return;
      this.isStopped = false;
      draws.done = 0;
      [this.before, this.limit] = [0, 0];
    }
    if (this.isStopped) return;
    this.seekShares(store, question, explorer);
    const wanted = question.item.seconds ?? usualDraws.seconds;
    const isOnItsWay = draws.isRunning && Math.abs(this.before + this.limit - wanted) < worthIt;
    if (isOnItsWay || (draws.key === key && draws.fault)) return;
    const { elapsed } = this;
    draws.stop();
    const sofar = draws.of === key ? draws.result : null;
    const task = drawsTask(store, question, sofar?.[0]!.samples.length);
    const left = wanted - elapsed;
    const isWorthIt = left >= worthIt && task.count > 0;
    [this.before, this.limit, draws.done] = [elapsed, isWorthIt ? left : 0, 0];
    if (isWorthIt) draws.start(explorer, { key, task: { ...task, seconds: left }, sofar });
  }
  private seekShares(store: Store, question: DrawsQuestion, explorer: Explorer): void {
    const { shares } = this;
    const task = sharesTask(store, question);
    const key = JSON.stringify(task);
    if (shares.key === key && (shares.isRunning || shares.isWhole || shares.fault)) return;
    shares.start(explorer, { key, task });
  }
  /** Stopped by hand: nothing goes on by itself. */
  stop(): void {
    this.halt();
    this.isStopped = true;
  }
  goOn(): void {
    this.isStopped = false;
  }
  halt(): void {
    [this.before, this.limit] = [this.elapsed, 0];
    this.draws.stop();
    this.shares.stop();
  }
}
