import type { ReactiveController } from 'lit';
import type { Cell } from '../graph/cell.ts';
import { NotSettled } from '../graph/snapshot.ts';
import type { SweepResult } from '../graph/sweep.ts';
import { type Question, sweepNow, taskOf } from '../notebook/sweeps.ts';
import { Overlay } from './overlay.ts';
import type { Piece } from './piece.ts';
import type { OtherSweep } from './sweep-lines.ts';

/**
 * What a figure's sweep comes to in the other variants: at once where it is quick; else elsewhere, one variant after
 * another, while the figure can be seen. `renew` hears of what was not there before.
 */
export class SweepOthers implements ReactiveController {
  readonly overlay: Overlay;
  private readonly host: Piece;
  private readonly renew: () => void;
  private readonly found = new Map<string, { readonly key: string; readonly result: SweepResult | null }>();
  private job: { readonly id: string; readonly key: string; readonly stop: () => void } | null = null;

  constructor(host: Piece, question: () => Question, renew: () => void) {
    this.host = host;
    this.renew = renew;
    const cells = (): readonly Cell[] => {
      const { read, vary } = question();
      return read.role === 'slow' ? [vary] : [read, vary];
    };
    this.overlay = new Overlay(host, { cells, changed: renew });
    host.addController(this);
  }
  hostDisconnected(): void {
    this.stop();
  }

  /** The lines of a quick sweep. */
  quick(question: Question): readonly OtherSweep[] {
    const others = this.host.store.others!;
    return this.overlay.others.flatMap(({ id, ...shown }) => {
      const found = this.known(id, JSON.stringify([question.item, others.revision(id)]), () => {
        try {
          return sweepNow(others.snapshot(id), question);
        } catch (error) {
          if (!(error instanceof NotSettled)) throw error;
          return null; // it has no line
        }
      });
      return found ? [{ ...shown, found }] : [];
    });
  }
  /** Those of a slow one that are there; the rest is asked for. */
  slow(question: Question): readonly OtherSweep[] {
    const wanted = this.overlay.others.map((shown) => {
      const task = taskOf(this.host.store, question, shown.id);
      return { shown, task, key: JSON.stringify(task) };
    });
    const { job } = this;
    if (job && wanted.every(({ shown, key }) => shown.id !== job.id || key !== job.key)) this.stop();
    const next = wanted.find(({ shown, key }) => this.found.get(shown.id)?.key !== key);
    if (next && !this.job) this.ask(next);
    return wanted.flatMap(({ shown: { id, ...shown }, key }) => {
      const known = this.found.get(id);
      return known?.key === key && known.result ? [{ ...shown, found: known.result }] : [];
    });
  }
  /** Stops asking: what the figure is about comes first. */
  stop(): void {
    this.job?.stop();
    this.job = null;
  }

  private known(id: string, key: string, work: () => SweepResult | null): SweepResult | null {
    const before = this.found.get(id);
    if (before?.key === key) return before.result;
    const result = work();
    this.found.set(id, { key, result });
    return result;
  }
  private ask({
    shown: { id },
    task,
    key,
  }: {
    shown: { id: string };
    task: ReturnType<typeof taskOf>;
    key: string;
  }): void {
    const { explorer } = this.host.store;
    if (!explorer) return;
    const stop = explorer.explore('sweep', task, (news) => {
      if (news.is === 'waiting' || news.is === 'coming') return;
      this.job = null;
      this.found.set(id, { key, result: news.is === 'ready' ? news.result : null });
      this.renew();
    });
    this.job = { id, key, stop };
  }
}
