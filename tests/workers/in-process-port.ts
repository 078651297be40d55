import type { Cell } from '../../src/graph/cell.ts';
import type { Ask, Tell } from '../../src/workers/messages.ts';
import type { Port } from '../../src/workers/pool.ts';
import { work } from '../../src/workers/work.ts';

type Hear = (event: { readonly data: Tell }) => void;

/**
 * A worker without a thread: what goes in and out is cloned and comes later, as between threads. It can be killed, and
 * what it tells can be held back.
 */
export class InProcessPort implements Port {
  readonly asked: Ask[] = [];
  readonly told: Tell[] = [];
  terminated = false;
  private held: Tell[] | null = null;
  private readonly hearers: Hear[] = [];
  private readonly mourners: ((event: unknown) => void)[] = [];
  private readonly answer: (ask: Ask) => void;

  constructor(cells: ReadonlyMap<string, Cell>) {
    this.answer = work(cells, (tell) => {
      if (this.terminated) return;
      const copy = structuredClone(tell);
      this.told.push(copy);
      if (this.held) this.held.push(copy);
      else this.deliver(copy);
    });
  }
  private deliver(tell: Tell): void {
    setImmediate(() => {
      for (const hear of this.hearers) hear({ data: tell });
    });
  }

  postMessage(ask: Ask): void {
    const copy = structuredClone(ask);
    this.asked.push(copy);
    setImmediate(() => {
      if (this.terminated) return;
      try {
        this.answer(copy);
      } catch (error) {
        this.crash(error);
      }
    });
  }
  addEventListener(type: 'message' | 'error', listener: Hear | ((event: unknown) => void)): void {
    if (type === 'message') this.hearers.push(listener);
    else this.mourners.push(listener as (event: unknown) => void);
  }
  terminate(): void {
    this.terminated = true;
  }

  /** Something broke in the thread: it says so, as often as it is told to. */
  crash(error: unknown = new Error('out of memory')): void {
    for (const mourn of this.mourners) mourn(error);
  }
  /** From now on what it tells stays on its way until `letThrough`. */
  holdBack(): void {
    this.held ??= [];
  }
  letThrough(): void {
    const late = this.held ?? [];
    this.held = null;
    for (const tell of late) this.deliver(tell);
  }
}

/** Waits, a turn of the loop at a time, until something is so. */
export async function until(so: () => boolean, what: string, patience = 4000): Promise<void> {
  const end = performance.now() + patience;
  while (!so()) {
    if (performance.now() > end) throw new Error(`waited in vain: ${what}`);
    await turn();
  }
}
export const turn = (): Promise<void> => new Promise((go) => setImmediate(go));
/** Long enough for anything on its way to have come. */
export async function settle(): Promise<void> {
  for (let i = 0; i < 10; i++) await turn();
}
