import type { Explorer } from '../graph/explorer.ts';

/** An explorer that knows how many of its sweeps are still to come; `onEnd` is called as each ends or is stopped. */
export class Counted implements Explorer {
  outstanding = 0;
  private readonly explorer: Explorer;
  private readonly onEnd: () => void;

  constructor(explorer: Explorer, onEnd: () => void) {
    this.explorer = explorer;
    this.onEnd = onEnd;
  }
  sweep(task: Parameters<Explorer['sweep']>[0], report: Parameters<Explorer['sweep']>[1]): () => void {
    this.outstanding++;
    let running = true;
    const end = (): void => {
      if (running) this.outstanding--;
      running = false;
      this.onEnd();
    };
    const stop = this.explorer.sweep(task, (news) => {
      if (news.is === 'ready' || news.is === 'fault') end();
      report(news);
    });
    return () => {
      stop();
      end();
    };
  }
}
