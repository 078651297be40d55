import type { Cell, Input, Slow, ValueOf } from './cell.ts';
import { compile, type Graph, upstream } from './compile.ts';
import { outOfRange, unsound } from './compute.ts';
import { Memory } from './memory.ts';
import { inline, type News, type Runner } from './runner.ts';
import { computeNow, gather } from './settle.ts';
import { type Fault, lastGood, type State } from './state.ts';

interface Options {
  readonly runner?: Runner;
  /** Called with the cells whose state changed, whenever a slow cell reports. */
  readonly onNews?: (changed: readonly Cell[]) => void;
  /** What slow cells came to, here or in another graph of the same cells. */
  readonly memory?: Memory;
  /** Not the graph the page is about: its slow work goes behind. */
  readonly isOther?: boolean;
}

let owners = 0;

/**
 * The live values of a graph. Set inputs, hold cells, then `run`: it computes what is downstream of a change and
 * looked at, stops where a value comes out the same, and returns the cells whose state changed.
 */
export class Live {
  readonly graph: Graph;
  /** The cells computed by the last run, in order: tests read what ran. */
  ran: string[] = [];
  private readonly owner = ++owners;
  private readonly states: State[];
  /** Slots to compute when next looked at. */
  private readonly dirty: Uint8Array;
  /** Slots changed from outside since the last run. */
  private readonly touched: Uint8Array;
  private readonly held: Uint8Array;
  /** How many look at each slot. */
  private readonly looks = new Map<number, number>();
  private needed: Uint8Array;
  private readonly given: Record<string, unknown>[];
  private readonly jobs = new Map<number, { readonly key: string; readonly stop: () => void }>();
  private readonly memory: Memory;
  private readonly runner: Runner;
  private readonly isOther: boolean;
  private readonly onNews: (changed: readonly Cell[]) => void;

  /** `wanted` are the cells to know about; nothing is computed until it is looked at. */
  constructor(
    wanted: Iterable<Cell>,
    { runner = inline, onNews = () => {}, memory = new Memory(), isOther = false }: Options = {},
  ) {
    this.graph = compile(wanted);
    this.runner = runner;
    this.onNews = onNews;
    this.memory = memory;
    this.isOther = isOther;
    const { order } = this.graph;
    this.states = order.map((c) =>
      c.role === 'input' ? { is: 'ready', value: c.initial } : { is: 'waiting', last: undefined, done: 0 },
    );
    this.dirty = new Uint8Array(order.length).fill(1);
    this.touched = new Uint8Array(order.length);
    this.held = new Uint8Array(order.length);
    this.needed = new Uint8Array(order.length);
    this.given = order.map(() => ({}));
  }

  state<C extends Cell>(cell: C): State<ValueOf<C>> {
    return this.states[this.slot(cell)] as State<ValueOf<C>>;
  }
  /** True where nobody looks and something changed: the state is not that of the present inputs. */
  isStale(slot: number): boolean {
    return this.dirty[slot] === 1 && this.held[slot] === 0 && this.graph.order[slot]!.role !== 'input';
  }
  /** All slots at this moment: their states, which of them stand by themselves (1), and which are quick and stale (1). */
  moment(): { readonly states: State[]; readonly stands: Uint8Array; readonly stale: Uint8Array } {
    const { order, quick } = this.graph;
    const stands = this.held.slice();
    const stale = new Uint8Array(order.length);
    for (let i = 0; i < order.length; i++) {
      if (order[i]!.role === 'input') stands[i] = 1;
      if (quick[i] === 1 && this.isStale(i)) stale[i] = 1;
    }
    return { states: this.states.slice(), stands, stale };
  }
  /** True for what neither is slow nor stands on anything slow. */
  isQuick(cell: Cell): boolean {
    return this.graph.quick[this.slot(cell)] === 1;
  }
  isHeld(cell: Cell): boolean {
    return this.held[this.slot(cell)] === 1;
  }

  /** Looks at cells until the returned function is called; only what is looked at runs. */
  look(cells: Iterable<Cell>): () => void {
    const mine = Array.from(cells, (c) => this.slot(c));
    for (const slot of mine) this.looks.set(slot, (this.looks.get(slot) ?? 0) + 1);
    this.needed = upstream(this.graph, this.looks.keys());
    return () => {
      for (const slot of mine.splice(0)) {
        const left = this.looks.get(slot)! - 1;
        if (left > 0) this.looks.set(slot, left);
        else this.looks.delete(slot);
      }
      this.needed = upstream(this.graph, this.looks.keys());
      for (const slot of this.jobs.keys()) if (this.needed[slot] === 0) this.stopAt(slot);
    };
  }

  set<T>(input: Input<T>, value: NoInfer<T>): void {
    const slot = this.slot(input);
    const fault = outOfRange(input, value);
    this.touch(slot, fault ? this.fault(slot, fault) : { is: 'ready', value });
  }
  /** Something typed into an input that is no value: its readers wait for it, the last good value is kept. */
  fail(input: Input, fault: Fault): void {
    const slot = this.slot(input);
    this.touch(slot, this.fault(slot, fault));
  }
  /** Holds a derived cell at a value: from now on it is an input. */
  hold<T>(cell: Cell<T>, value: NoInfer<T>): void {
    const slot = this.slot(cell);
    this.stopAt(slot);
    const before = this.held[slot];
    this.held[slot] = 1;
    const next: State = cell.kind.sound(value) ? { is: 'ready', value } : this.fault(slot, unsound(cell));
    if (this.put(slot, next) || before === 0) this.touched[slot] = 1;
  }
  release(cell: Cell): void {
    const slot = this.slot(cell);
    if (this.held[slot] === 0) return;
    this.held[slot] = 0;
    this.touched[slot] = 1;
    this.dirty[slot] = 1;
  }
  /** What a held cell would be if it were let go. */
  computed<C extends Cell>(cell: C): State<ValueOf<C>> {
    const slot = this.slot(cell);
    if (cell.role !== 'cell') return this.state(cell);
    const given: Record<string, unknown> = {};
    const got = gather(this.graph, this.stateOf, slot, given);
    if (got.is === 'fault') return { is: 'fault', last: undefined, fault: got.fault };
    if (got.is === 'waiting') return { is: 'waiting', last: undefined, done: 0 };
    return computeNow(cell, given, got, undefined) as State<ValueOf<C>>;
  }

  /** Stops a slow cell's work; it waits until something it reads changes, or `resume`. */
  stop(cell: Slow): readonly Cell[] {
    const slot = this.slot(cell);
    const state = this.states[slot]!;
    if (state.is === 'ready' || state.is === 'fault') return [];
    this.stopAt(slot);
    this.dirty[slot] = 0;
    this.touch(slot, { is: 'waiting', last: lastGood(state), done: state.done, stopped: true });
    return this.run();
  }
  resume(cell: Slow): readonly Cell[] {
    this.dirty[this.slot(cell)] = 1;
    return this.run();
  }
  /** True while a job is running that something waits for: idle work keeps nobody waiting. */
  get busy(): boolean {
    return [...this.jobs.keys()].some((slot) => !(this.graph.order[slot] as Slow).idle);
  }
  /** Stops everything: this graph is not used any more. */
  close(): void {
    for (const slot of Array.from(this.jobs.keys())) this.stopAt(slot);
  }

  /** Brings all that is looked at up to date; what nobody looks at waits instead of passing an old value off as ready. */
  run(): Cell[] {
    this.ran = [];
    const changed: Cell[] = [];
    const { order } = this.graph;
    for (let i = 0; i < order.length; i++) {
      const c = order[i]!;
      let tell = this.touched[i] === 1;
      this.touched[i] = 0;
      if (c.role !== 'input' && this.held[i] === 0 && this.dirty[i] === 1) {
        const looked = this.needed[i] === 1;
        const next = looked ? this.next(c, i) : this.waiting(i, 0);
        if (looked) this.dirty[i] = 0;
        if (this.put(i, next)) tell = true;
      }
      if (tell) changed.push(c);
    }
    return changed;
  }

  private readonly stateOf = (slot: number): State => this.states[slot]!;
  private slot(cell: Cell): number {
    const slot = this.graph.slotOf.get(cell);
    if (slot === undefined) throw new Error(`"${cell.id}" is not in this graph`);
    return slot;
  }

  private next(c: Exclude<Cell, Input>, i: number): State {
    const given = this.given[i]!;
    const got = gather(this.graph, this.stateOf, i, given);
    if (got.is === 'fault') return this.without(i, this.fault(i, got.fault));
    if (got.is === 'waiting') return this.without(i, this.waiting(i, 0));
    if (c.role === 'slow')
      return got.is === 'coming' ? this.without(i, this.waiting(i, 0)) : this.startSlow(c, i, { ...given });
    this.ran.push(c.id);
    return computeNow(c, given, got, lastGood(this.states[i]!));
  }
  /** A slow cell that has no inputs any more is not worked on either. */
  private without(i: number, state: State): State {
    this.stopAt(i);
    return state;
  }

  private startSlow(c: Slow, i: number, given: Record<string, unknown>): State {
    const key = this.memory.key(c, given);
    if (this.jobs.get(i)?.key === key) return this.states[i]!;
    this.stopAt(i);
    const known = this.memory.recall(c, key);
    if (known) return { is: 'ready', value: known.value };
    this.ran.push(c.id);
    let state: State = this.waiting(i, 0);
    let heard = true;
    let started = false;
    const stop = this.runner.start({ owner: this.owner, cell: c, given, isOther: this.isOther }, (news) => {
      if (!heard) return; // a job that was stopped, or has given its value, may still speak
      state = this.hear(c, i, key, news, state);
      if (isLast(state)) heard = false;
      if (!started) return;
      if (isLast(state)) this.jobs.delete(i);
      this.touch(i, state);
      const changed = this.run();
      if (changed.length > 0) this.onNews(changed);
    });
    started = true;
    if (!isLast(state))
      this.jobs.set(i, {
        key,
        stop: () => {
          heard = false;
          stop();
        },
      });
    return state;
  }

  /** What news makes of the state its job has brought about so far; a provisional value that is none is left out. */
  private hear(c: Slow, i: number, key: string, news: News, sofar: State): State {
    if (news.is === 'fault') return this.fault(i, news.fault);
    if (news.is === 'ready') {
      if (!c.kind.sound(news.value)) return this.fault(i, unsound(c));
      this.memory.keep(c, key, news.value);
      return news;
    }
    if (news.is === 'coming' && c.kind.sound(news.value)) return news;
    return sofar.is === 'coming' ? { ...sofar, done: news.done } : this.waiting(i, news.done);
  }
  private fault(i: number, fault: Fault): State {
    return { is: 'fault', last: lastGood(this.states[i]!), fault };
  }
  private waiting(i: number, done: number): State {
    return { is: 'waiting', last: lastGood(this.states[i]!), done };
  }
  private stopAt(slot: number): void {
    const job = this.jobs.get(slot);
    if (!job) return;
    this.jobs.delete(slot);
    this.dirty[slot] = 1; // whatever it would have said is still to be found out
    job.stop();
  }

  /** Stores a state; true unless nothing changed. Its readers are to run, unless they would come out the same. */
  private put(i: number, next: State): boolean {
    const last = this.states[i]!;
    if (sameState(this.graph.order[i]!, last, next)) return false;
    this.states[i] = next;
    const onlyProgress =
      (last.is === 'waiting' && next.is === 'waiting') ||
      (last.is === 'coming' && next.is === 'coming' && last.value === next.value);
    if (!onlyProgress) for (const r of this.graph.readers[i]!) this.dirty[r] = 1;
    return true;
  }
  private touch(i: number, next: State): void {
    if (this.put(i, next)) this.touched[i] = 1;
  }
}

const isLast = (state: State): boolean => state.is === 'ready' || state.is === 'fault';

/** Whether nobody could tell one state from the other. */
function sameState({ kind }: Cell, a: State, b: State): boolean {
  if (a.is === 'ready') return b.is === 'ready' && kind.same(a.value, b.value);
  if (a.is === 'fault') return b.is === 'fault' && a.fault === b.fault;
  if (a.is === 'coming') return a === b;
  return b.is === 'waiting' && a.last === b.last && a.done === b.done && a.stopped === b.stopped;
}
