import { faultOf } from '../graph/compute.ts';
import type { Answer, Exploration, Explorer, Found, Task as Asked } from '../graph/explorer.ts';
import type { Job, News, Runner } from '../graph/runner.ts';
import type { Ask, Tell } from './messages.ts';

/** A worker as the pool sees it. */
export interface Port {
  postMessage(ask: Ask): void;
  addEventListener(type: 'message', listener: (event: { readonly data: Tell }) => void): void;
  addEventListener(type: 'error', listener: (event: unknown) => void): void;
  terminate(): void;
}
type Work = Ask extends infer A ? (A extends { do: 'stop' } ? never : A extends Ask ? Omit<A, 'task'> : never) : never;
/** What goes before what: a lower level first. What is idle waits until nothing else does, and makes way for it. */
const level = { look: 0, work: 1, other: 2, idle: 3, otherIdle: 4 };

interface Task {
  readonly work: Work;
  readonly level: number;
  readonly hear: (tell: Tell) => void;
  number: number;
  wanted: boolean;
  /** It was told to make way, and is to be done later from the start. */
  putOff: boolean;
}
interface Hand {
  readonly port: Port;
  task: Task | null;
}

/**
 * A few workers that share what there is to do: whole slow cells, parts of them, what-ifs. First looks go first, what is
 * idle last, else it is first come, first served; a stopped task leaves the queue, or its worker is told and takes the
 * next one.
 */
export class Pool implements Runner, Explorer {
  private readonly hands: Hand[] = [];
  private readonly queue: Task[] = [];
  private readonly make: () => Port;
  private readonly size: number;
  private last = 0;

  constructor(make: () => Port, size: number) {
    this.make = make;
    this.size = size;
  }

  start({ cell, given, isOther }: Job, report: (news: News) => void): () => void {
    const failed = (error: unknown): void => report({ is: 'fault', fault: faultOf(error, cell) });
    const { parts } = cell;
    let list: readonly unknown[] = [];
    let first = 0;
    try {
      list = parts?.list(given as never) ?? [];
      first = parts?.first?.(given as never) ?? 0;
    } catch (error) {
      failed(error);
      return () => {};
    }
    const usual = cell.idle ? (isOther ? level.otherIdle : level.idle) : isOther ? level.other : level.work;
    const look = cell.idle || isOther ? usual : level.look;
    if (!parts || list.length === 0)
      return this.ask({ do: 'steps', cell: cell.id, given }, usual, (tell) => report(newsOf(tell)));
    const results: unknown[] = list.map(() => undefined);
    const shares = list.map(() => 0);
    const join = (): unknown => parts.join(given as never, results);
    const stops = list.map((_, part) =>
      this.ask({ do: 'part', cell: cell.id, given, part }, part < first ? look : usual, (tell) => {
        if (tell.is === 'fault') {
          for (const stop of stops) stop();
          return report({ is: 'fault', fault: tell.fault });
        }
        if (tell.is === 'ready') results[part] = tell.value;
        shares[part] = tell.is === 'ready' ? 1 : 'done' in tell ? tell.done : shares[part]!;
        const done = shares.reduce((sum, share) => sum + share, 0) / shares.length;
        if (tell.is !== 'ready') return report({ is: 'waiting', done });
        let value: unknown;
        try {
          value = join();
        } catch (error) {
          for (const stop of stops) stop();
          return failed(error);
        }
        if (shares.every((share) => share === 1)) report({ is: 'ready', value });
        else report(value === undefined ? { is: 'waiting', done } : { is: 'coming', value, done });
      }),
    );
    return () => {
      for (const stop of stops) stop();
    };
  }

  /** Lets every worker go once through a slow cell, from starting values, before anybody waits for it. */
  warm(cell: string): void {
    for (let i = 0; i < this.size; i++) this.ask({ do: 'warm', cell }, level.work, () => {});
  }

  explore<K extends Exploration>(
    kind: K,
    asked: Asked<K>,
    report: (news: Found<Answer<K>>) => void,
    isUrgent = false,
  ): () => void {
    return this.ask({ do: 'explore', kind, asked }, isUrgent ? level.look : level.work, (tell) => {
      if (tell.is === 'ready') report({ is: 'ready', result: tell.value as Answer<K> });
      else if (tell.is === 'coming') report({ is: 'coming', result: tell.value as Answer<K>, done: tell.done });
      else if (tell.is === 'fault') report({ is: 'fault', message: tell.fault.message });
      else if (tell.is === 'waiting') report({ is: 'waiting', done: tell.done });
    });
  }

  /** What a task says after it was told to stop, or had been done by then, is not heard any more. */
  private ask(work: Work, level: number, hear: (tell: Tell) => void): () => void {
    const task: Task = {
      work,
      level,
      hear: (tell) => void (task.wanted && hear(tell)),
      number: 0,
      wanted: true,
      putOff: false,
    };
    this.queueUp(task);
    return () => {
      if (!task.wanted) return;
      task.wanted = false;
      const place = this.queue.indexOf(task);
      if (place >= 0) this.queue.splice(place, 1);
      const hand = this.hands.find((h) => h.task === task);
      hand?.port.postMessage({ task: task.number, do: 'stop' });
    };
  }
  private queueUp(task: Task): void {
    const behind = this.queue.findIndex((t) => t.level > task.level);
    this.queue.splice(behind < 0 ? this.queue.length : behind, 0, task);
    // Not before all that one change asks for is in the queue.
    queueMicrotask(() => this.deal());
  }

  private deal(): void {
    while (this.queue.length > 0) {
      let hand = this.hands.find((h) => h.task === null);
      if (!hand && this.hands.length < this.size) this.hands.push((hand = this.hire()));
      if (!hand) return this.makeRoom();
      const task = this.queue.shift()!;
      task.number = ++this.last;
      hand.task = task;
      hand.port.postMessage({ ...task.work, task: task.number });
    }
  }
  /** Puts off idle work in favor of what waits. */
  private makeRoom(): void {
    const waiting = this.queue.filter((t) => t.level < level.idle).length;
    const leaving = this.hands.filter((h) => h.task?.putOff).length;
    const idle = this.hands.filter(({ task }) => task && task.level >= level.idle && !task.putOff);
    for (const { port, task } of idle.slice(0, Math.max(0, waiting - leaving))) {
      task!.putOff = true;
      port.postMessage({ task: task!.number, do: 'stop' });
    }
  }

  private hire(): Hand {
    const hand: Hand = { port: this.make(), task: null };
    hand.port.addEventListener('message', ({ data }) => {
      const { task } = hand;
      if (!task || data.task !== task.number) return;
      if (data.is !== 'waiting' && data.is !== 'coming') {
        hand.task = null;
        if (data.is === 'stopped' && task.putOff && task.wanted) this.queueUp(Object.assign(task, { putOff: false }));
        this.deal();
      }
      if (data.is !== 'stopped') task.hear(data);
    });
    hand.port.addEventListener('error', () => {
      // A worker that could not start or died: what it was doing has no answer, the others go on.
      const place = this.hands.indexOf(hand);
      if (place < 0) return; // it had been given up before
      this.hands.splice(place, 1);
      hand.port.terminate();
      const { task } = hand;
      hand.task = null;
      if (task)
        task.hear({
          task: task.number,
          is: 'fault',
          fault: { at: '', about: '', message: ['This page could not start its calculation in the background.'] },
        });
      this.deal();
    });
    return hand;
  }
}

function newsOf(tell: Tell): News {
  switch (tell.is) {
    case 'ready':
      return { is: 'ready', value: tell.value };
    case 'coming':
      return { is: 'coming', value: tell.value, done: tell.done };
    case 'fault':
      return { is: 'fault', fault: tell.fault };
    default:
      return { is: 'waiting', done: 'done' in tell ? tell.done : 0 };
  }
}
