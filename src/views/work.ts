import type { Answer, Exploration, Explorer, Found, Task } from '../graph/explorer.ts';
import type { Phrase } from '../units/phrase.ts';

/** What is to be worked on: two with the same key ask for the same. */
export interface Order<K extends Exploration> {
  readonly key: string;
  readonly task: Task<K>;
  /** It is done in a moment, and goes before what takes long. */
  readonly isUrgent?: boolean;
  /** What stands already, if the task only adds to it. */
  readonly sofar?: Answer<K> | null;
}

/** One what-if worked on elsewhere: how far it is, and what it came to last, until something else takes its place. */
export class Work<K extends Exploration> {
  /** What is shown, and what it was asked for by; it may be of an order before. */
  result: Answer<K> | null = null;
  of: string | null = null;
  isWhole = false;
  /** The order that was given last. */
  key: string | null = null;
  began = 0;
  /** The share of the running task that is done, or of the last one where it was stopped. */
  done = 0;
  fault: Phrase | null = null;
  private halt: (() => void) | null = null;
  private readonly kind: K;
  private readonly changed: () => void;
  private readonly join: (before: Answer<K>, more: Answer<K>) => Answer<K>;

  constructor(kind: K, changed: () => void, join = (_: Answer<K>, more: Answer<K>): Answer<K> => more) {
    this.kind = kind;
    this.changed = changed;
    this.join = join;
  }
  get isRunning(): boolean {
    return this.halt !== null;
  }
  start(explorer: Explorer, { key, task, isUrgent = false, sofar = null }: Order<K>): void {
    this.stop();
    this.key = key;
    this.began = performance.now();
    this.done = 0;
    this.fault = null;
    this.halt = explorer.explore(this.kind, task, (news) => this.hear(news, key, sofar), isUrgent);
  }
  private hear(news: Found<Answer<K>>, key: string, sofar: Answer<K> | null): void {
    if (news.is === 'fault') this.fault = news.message;
    else if (news.is !== 'waiting') {
      this.result = sofar ? this.join(sofar, news.result) : news.result;
      this.of = key;
    }
    this.done = 'done' in news ? news.done : 1;
    const isOver = news.is === 'ready' || news.is === 'fault';
    this.isWhole = news.is === 'ready';
    if (isOver) this.halt = null;
    this.changed();
  }
  stop(): void {
    this.halt?.();
    this.halt = null;
  }
  forget(): void {
    this.stop();
    [this.result, this.of, this.key, this.isWhole, this.done, this.fault] = [null, null, null, false, 0, null];
  }
}
