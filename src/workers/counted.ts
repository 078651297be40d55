import type { Answer, Exploration, Explorer, Found, Task } from '../graph/explorer.ts';

/** An explorer that knows how much of its work is still to come; `onEnd` is called as each ends or is stopped. */
export class Counted implements Explorer {
  outstanding = 0;
  private readonly explorer: Explorer;
  private readonly onEnd: () => void;

  constructor(explorer: Explorer, onEnd: () => void) {
    this.explorer = explorer;
    this.onEnd = onEnd;
  }
  explore<K extends Exploration>(
    kind: K,
    task: Task<K>,
    report: (news: Found<Answer<K>>) => void,
    isUrgent?: boolean,
  ): () => void {
    this.outstanding++;
    let running = true;
    const end = (): void => {
      if (running) this.outstanding--;
      running = false;
      this.onEnd();
    };
    const hear = (news: Found<Answer<K>>): void => {
      if (news.is === 'ready' || news.is === 'fault') end();
      report(news);
    };
    const stop = this.explorer.explore(kind, task, hear, isUrgent);
    return () => {
      stop();
      end();
    };
  }
}
