import { phrase } from '../units/phrase.ts';
import { type Cell, drain, type Input, type Mover, type Range } from './cell.ts';
import { downstream, type Graph, upstream } from './compile.ts';
import { faultOf, outOfRange, unsound } from './compute.ts';
import { findShift, isClose } from './shift.ts';
import { NotSettled, type Snapshot } from './snapshot.ts';
import { type Fault, Impossible } from './state.ts';

/** Where a value goes: the objects that later cells are given, and the name they read it under. */
interface Write {
  readonly given: Record<string, unknown>;
  readonly name: string;
}
/** One cell of the path, with what running it takes. */
interface Step {
  readonly slot: number;
  readonly cell: Exclude<Cell, Input>;
  readonly run: (given: never) => unknown;
  readonly given: Record<string, unknown>;
  /** Most cells of a path are read by one other; the rest of the writes are few. */
  readonly first: Write;
  readonly more: readonly Write[];
}
/** A varied derived cell that is not held is moved as dragging moves it: by shifting these inputs. */
interface Moved {
  readonly target: number;
  readonly slots: readonly number[];
  readonly inputs: readonly Input<number>[];
  readonly rest: readonly number[];
  readonly plan: readonly Step[];
  readonly small: number;
  readonly straight: boolean;
  /** Which of its inputs somebody reads besides the moved cell. */
  readonly direct: readonly number[];
  readonly range: Range;
  shift: number;
  slope: number | undefined;
  aim: number;
  /** The moved cell's value at no shift, while nothing but aims has been put since it was found. */
  origin: number | undefined;
  /** What runs after it when only its aim was put. */
  readonly after: readonly Step[];
}

/** How a varied cell is moved, if it is. */
export type MoverOf = (at: Snapshot, cell: Cell) => Mover | undefined;

/** How a cell is moved when nothing else is said: the first of its movers that nothing held keeps from reaching it. */
export function moverOf(at: Snapshot, cell: Cell): Mover | undefined {
  const { graph, stands } = at;
  const slot = graph.slotOf.get(cell)!;
  if (cell.role === 'input' || stands(slot)) return undefined;
  return cell.movedBy.find(({ inputs }) => {
    const slots = inputs.flatMap((input) => graph.slotOf.get(input) ?? []);
    return slots.length === inputs.length && downstream(graph, slots, stands)[slot] === 1;
  });
}

/**
 * What a few cells would be if a few others were varied: runs only the cells between. Put values, then `run`, then
 * `get`. An input or a held cell is varied directly; a derived cell with a mover by solving for it, so that a sweep
 * at x says what dragging to x says; any other derived cell as if it were held. A varied cell that is never put stays
 * where it stands.
 * Throws NotSettled when something it reads outside its path is not ready, Impossible when two of the varied cells
 * would move one input.
 */
export class Probe {
  /** The cells on the way from what is varied to what is read. */
  readonly path: readonly Cell[];
  readonly isSlow: boolean;
  private readonly graph: Graph;
  private readonly values: unknown[];
  private readonly writes: readonly (readonly Write[])[];
  private readonly vary: readonly number[];
  private readonly moved: readonly (Moved | undefined)[];
  private readonly read: readonly number[];
  private readonly plans = new Map<number, readonly Step[]>();
  private readonly planOf: (mask: number) => readonly Step[];
  private readonly movedMask: number;
  /** The moved cell, if there is just one. */
  private readonly only: Moved | undefined;
  /** Why a slot has no answer. */
  private readonly faults = new Map<number, Fault>();
  /** The varied cells put since the last run; at first all of them, so that the whole path runs. */
  private pending: number;

  constructor(at: Snapshot, vary: readonly Cell[], read: readonly Cell[], mover: MoverOf = moverOf) {
    const { graph } = at;
    const { order, names, sources, mayLack } = graph;
    this.graph = graph;
    this.vary = vary.map((c) => graph.slotOf.get(c)!);
    this.read = read.map((c) => graph.slotOf.get(c)!);
    const movers = vary.map((c) => mover(at, c));
    const starts = vary.map((_, k) => movers[k]?.inputs.map((i) => graph.slotOf.get(i)!) ?? [this.vary[k]!]);
    const shared = starts.flat().find((slot, i, all) => all.indexOf(slot) < i);
    if (shared !== undefined)
      throw new Impossible(phrase`These cannot be varied together: both move ${order[shared]!.label.toLowerCase()}.`);
    const pinned = new Set(this.vary.filter((_, k) => !movers[k]));
    const stop = (slot: number): boolean => at.stands(slot) || pinned.has(slot);

    const wanted = upstream(graph, [...this.read, ...this.vary.filter((_, k) => movers[k])], stop);
    const path = downstream(graph, starts.flat(), stop);
    const on = new Uint8Array(order.length);
    const onPath: number[] = [];
    for (let i = 0; i < order.length; i++)
      if (wanted[i] === 1 && path[i] === 1 && !stop(i)) {
        on[i] = 1;
        onPath.push(i);
      }
    this.path = onPath.map((i) => order[i]!);
    this.isSlow = this.path.some((c) => c.role === 'slow');

    const free = new Set([...starts.flat(), ...this.vary]);
    // Only what it starts from is asked for: the path is run before anything of it is read.
    this.values = order.map(() => undefined);
    const take = (slot: number, isNeeded: boolean): void => {
      if (on[slot] === 1 && !free.has(slot)) return;
      const state = at.state(slot);
      if (state.is === 'ready') this.values[slot] = state.value;
      else if (on[slot] === 1 || free.has(slot)) return;
      else if (isNeeded) throw new NotSettled(order[slot]!, state);
      else this.faults.set(slot, state.is === 'fault' ? state.fault : unsettled(order[slot]!));
    };
    for (const slot of free) take(slot, false);
    const writes: Write[][] = [];
    for (const slot of free) writes[slot] = [];
    const givens = onPath.map((i) => {
      const given: Record<string, unknown> = {};
      writes[i] ??= [];
      sources[i]!.forEach((s, k) => {
        take(s, !mayLack[i]![k]);
        given[names[i]![k]!] = this.values[s];
        if (on[s] === 1 || free.has(s)) writes[s]!.push({ given, name: names[i]![k]! });
      });
      return given;
    });
    for (const slot of this.read) take(slot, true);
    this.writes = writes;
    this.pending = vary.length < 31 ? (1 << vary.length) - 1 : -1;
    for (const slot of this.vary) {
      const state = at.state(slot);
      if (on[slot] === 0 && state.is !== 'ready')
        this.faults.set(slot, state.is === 'fault' ? state.fault : unsettled(order[slot]!));
    }

    const reach = starts.map((slots) => downstream(graph, slots, stop));
    const steps = onPath.map((slot, n): Step => {
      const cell = order[slot] as Exclude<Cell, Input>;
      const given = givens[n]!;
      const run = cell.role === 'cell' ? cell.compute : (cell.rough ?? ((g: never): unknown => drain(cell.steps(g))));
      const [first = { given: {}, name: 'unread' }, ...more] = writes[slot]!;
      return { slot, cell, run, given, first, more };
    });
    this.planOf = (mask) =>
      steps.filter(({ slot }) => reach.some((marks, k) => (mask & (1 << k)) !== 0 && marks[slot] === 1));
    this.movedMask = movers.reduce((mask, mover, k) => (mover ? mask | (1 << k) : mask), 0);
    this.moved = movers.map((mover, k) => {
      if (!mover) return undefined;
      const target = this.vary[k]!;
      const toTarget = upstream(graph, [target], stop);
      for (const slot of starts[k]!)
        if (at.state(slot).is !== 'ready') throw new NotSettled(order[slot]!, at.state(slot));
      const rest = starts[k]!.map((slot) => this.values[slot] as number);
      // What else feels a shift: the short way of a straight relation leaves out only what leads to its cell alone.
      const isFelt = (slot: number): boolean =>
        this.read.includes(slot) || graph.readers[slot]!.some((r) => on[r] === 1 && toTarget[r] === 0);
      const felt = upstream(
        graph,
        [...starts[k]!, ...steps.map((step) => step.slot)].filter((slot) => slot !== target && isFelt(slot)),
        (slot) => stop(slot) || slot === target,
      );
      const straight = mover.straight === true;
      return {
        target,
        slots: starts[k]!,
        inputs: mover.inputs,
        rest,
        plan: steps.filter(({ slot }) => toTarget[slot] === 1),
        straight,
        direct: starts[k]!.flatMap((slot, i) => (felt[slot] === 1 ? [i] : [])),
        small: Math.min(...mover.inputs.map((input, i) => small(input, rest[i]!))),
        range: [
          Math.max(...mover.inputs.map((input, i) => (input.hard?.[0] ?? -Infinity) - rest[i]!)),
          Math.min(...mover.inputs.map((input, i) => (input.hard?.[1] ?? Infinity) - rest[i]!)),
        ],
        shift: 0,
        slope: undefined,
        origin: undefined,
        after: steps.filter(
          ({ slot }) =>
            reach[k]![slot] === 1 && (toTarget[slot] === 0 || (straight && slot !== target && felt[slot] === 1)),
        ),
        aim: (this.values[target] ?? NaN) as number,
      };
    });
    const all = this.moved.filter((moved) => moved !== undefined);
    this.only = all.length === 1 ? all[0] : undefined;
  }

  /** Sets the k-th varied cell; takes effect with `run`. */
  put(k: number, value: unknown): void {
    const moved = this.moved[k];
    if (moved) moved.aim = value as number;
    else {
      const slot = this.vary[k]!;
      const c = this.graph.order[slot]!;
      this.assign(slot, value);
      this.note(slot, c.role === 'input' ? outOfRange(c, value) : c.kind.sound(value) ? null : unsound(c));
    }
    this.pending |= 1 << k;
  }

  /** Figures of what is read along values of the k-th varied cell, one row a result; NaN where there is no answer. */
  along(
    k: number,
    xs: ArrayLike<number>,
    rows: readonly Float64Array[],
    take: (value: unknown, j: number) => number,
  ): void {
    const only = this.moved[k] === this.only ? this.only : undefined;
    for (let i = 0; i < xs.length; i++) {
      if (only) i = this.slideAlong(only, xs, i, rows, take);
      if (i === xs.length) return;
      this.put(k, xs[i]!);
      this.tryRun();
      for (let j = 0; j < rows.length; j++) {
        const value = this.tryGet(j);
        rows[j]![i] = value === undefined ? NaN : take(value, j);
      }
    }
  }
  /** As far along as the short way goes; returns where it stopped. */
  private slideAlong(
    only: Moved,
    xs: ArrayLike<number>,
    from: number,
    rows: readonly Float64Array[],
    take: (value: unknown, j: number) => number,
  ): number {
    const { read, values } = this;
    const { origin } = only;
    if (this.pending !== 0 || origin === undefined || this.faults.size > 0) return from;
    let i = from;
    for (; i < xs.length && this.slideTo(only, origin, xs[i]!); i++)
      for (let j = 0; j < rows.length; j++) rows[j]![i] = take(values[read[j]!], j);
    return i;
  }
  /** Brings what is read up to date. Throws where nothing that is read has an answer. */
  run(): void {
    this.tryRun();
    if (this.faults.size > 0 && this.read.every((slot) => this.faults.has(slot))) this.get(0);
  }
  /** The same without complaint: `tryGet` tells what has no answer. */
  tryRun(): void {
    if (this.slide()) return;
    // A moved cell has to be brought back to its aim whatever else was put.
    const mask = this.pending === 0 ? 0 : this.pending | this.movedMask;
    if (mask !== 0) this.move();
    let plan = this.plans.get(mask);
    if (!plan) this.plans.set(mask, (plan = this.planOf(mask)));
    this.compute(plan);
    this.pending = 0;
  }

  /** The j-th read value after a run. Throws where it has no answer. */
  get(j: number): unknown {
    const slot = this.read[j]!;
    const fault = this.faults.get(slot);
    if (fault) throw new Impossible(fault.message);
    return this.values[slot];
  }
  /** The j-th read value, or undefined where it has no answer. */
  tryGet(j: number): unknown {
    const slot = this.read[j]!;
    return this.faults.size > 0 && this.faults.has(slot) ? undefined : this.values[slot];
  }
  /** Where the inputs of the k-th varied cell's mover stand after a run, or null if it has none. */
  movedTo(k: number): readonly { readonly input: Input<number>; readonly value: number }[] | null {
    const moved = this.moved[k];
    return moved ? moved.inputs.map((input, i) => ({ input, value: moved.rest[i]! + moved.shift })) : null;
  }

  /**
   * The short way, when only the aim of the one moved cell was put since its relation was last looked at: the first
   * step of the search for its shift, which is the last one wherever the relation is a straight line.
   */
  private slide(): boolean {
    const moved = this.only;
    if (!moved || this.pending !== this.movedMask || moved.origin === undefined || this.faults.size > 0) return false;
    return this.slideTo(moved, moved.origin, moved.aim);
  }
  private slideTo(moved: Moved, origin: number, aim: number): boolean {
    const slope = moved.slope!;
    const shift = (aim - origin) / slope;
    if (!(shift >= moved.range[0] && shift <= moved.range[1])) return false;
    moved.aim = aim;
    moved.shift = shift;
    if (moved.straight) {
      for (let i = 0; i < moved.direct.length; i++)
        this.assign(moved.slots[moved.direct[i]!]!, moved.rest[moved.direct[i]!]! + shift);
      this.assign(moved.target, aim);
    } else {
      for (let i = 0; i < moved.slots.length; i++) this.assign(moved.slots[i]!, moved.rest[i]! + shift);
      if (this.computeAll(moved.plan) < moved.plan.length) return false;
      if (!isClose((this.values[moved.target] as number) - aim, slope, moved.small)) return false;
    }
    if (this.computeAll(moved.after) < moved.after.length) return false;
    this.pending = 0;
    return true;
  }

  private assign(slot: number, value: unknown): void {
    this.values[slot] = value;
    const writes = this.writes[slot]!;
    for (let w = 0; w < writes.length; w++) writes[w]!.given[writes[w]!.name] = value;
  }

  private note(slot: number, fault: Fault | null): void {
    if (fault) this.faults.set(slot, fault);
    else if (this.faults.size > 0) this.faults.delete(slot);
  }

  private compute(plan: readonly Step[]): void {
    let p = this.faults.size === 0 ? this.computeAll(plan) : 0;
    // Where something has no answer, what stands on it has none either.
    for (; p < plan.length; p++) {
      const step = plan[p]!;
      this.note(step.slot, this.faultAbove(step.slot) ?? this.computeOne(step));
    }
  }
  /** Runs steps while each has an answer; returns how many did. */
  private computeAll(plan: readonly Step[]): number {
    const { values } = this;
    let p = 0;
    try {
      for (; p < plan.length; p++) {
        const step = plan[p]!;
        const value = step.run(step.given as never);
        // A figure minus itself is zero unless it is infinite or no figure.
        if (typeof value === 'number' ? value - value !== 0 : !step.cell.kind.sound(value)) return p;
        values[step.slot] = value;
        step.first.given[step.first.name] = value;
        for (let w = 0; w < step.more.length; w++) step.more[w]!.given[step.more[w]!.name] = value;
      }
    } catch {
      return p; // it is asked again, for its fault
    }
    return p;
  }
  private computeOne({ slot, cell, run, given }: Step): Fault | null {
    const lacks = this.lackAbove(slot, given);
    try {
      const value = run(given as never);
      if (!cell.kind.sound(value)) return lacks ?? unsound(cell);
      this.assign(slot, value);
      return null;
    } catch (error) {
      return lacks ?? faultOf(error, cell);
    }
  }
  private faultAbove(slot: number): Fault | null {
    const { sources, mayLack } = this.graph;
    for (let k = 0; k < sources[slot]!.length; k++) {
      const fault = mayLack[slot]![k] ? undefined : this.faults.get(sources[slot]![k]!);
      if (fault) return fault;
    }
    return null;
  }
  /** Gives nothing for the sources that a cell may do without and that have no answer; the fault of one of them. */
  private lackAbove(slot: number, given: Record<string, unknown>): Fault | null {
    const { sources, names, mayLack } = this.graph;
    let lacks: Fault | null = null;
    sources[slot]!.forEach((source, k) => {
      const fault = mayLack[slot]![k] ? this.faults.get(source) : undefined;
      if (!fault) return;
      given[names[slot]![k]!] = undefined;
      lacks ??= fault;
    });
    return lacks;
  }

  /** Brings every moved cell to its aim: one after another, and again while they disturb one another. */
  private move(): void {
    const all = this.moved.filter((moved) => moved !== undefined);
    for (const moved of all) this.place(moved, 0); // what was asked before leaves no trace
    for (let round = 0; round < 8; round++) {
      const rests = all.map((moved) => this.shift(moved, round > 0 ? moved.shift : 0));
      if (all.length < 2 || (round > 0 && rests.every(Boolean))) return;
    }
    for (const moved of all) this.block(moved, 'cannot be moved there together with the other.');
  }
  /** Shifts the inputs of a mover until its cell is at its aim; true if they stood there already. */
  private shift(moved: Moved, from: number): boolean {
    const miss = (shift: number): number => {
      this.place(moved, shift);
      this.compute(moved.plan);
      return this.faults.has(moved.target) ? NaN : (this.values[moved.target] as number) - moved.aim;
    };
    const found = findShift(miss, { ...moved, from });
    const shift = found?.shift ?? from;
    this.place(moved, shift);
    moved.origin = undefined;
    if (found) {
      moved.slope = found.slope;
      if (from === 0) moved.origin = found.start + moved.aim;
      moved.inputs.forEach((input, i) => this.note(moved.slots[i]!, outOfRange(input, moved.rest[i]! + shift)));
    } else this.block(moved, 'cannot be moved that far.');
    return shift === from;
  }
  private place(moved: Moved, shift: number): void {
    moved.shift = shift;
    for (let i = 0; i < moved.slots.length; i++) {
      this.assign(moved.slots[i]!, moved.rest[i]! + shift);
      this.note(moved.slots[i]!, null);
    }
  }
  /** Nobody computes from the inputs of a mover that did not bring its cell to its aim. */
  private block({ slots, target }: Moved, why: string): void {
    const { id, label } = this.graph.order[target]!;
    for (const slot of slots) this.note(slot, { at: id, about: id, message: [`${label} ${why}`] });
  }
}

const unsettled = ({ id, label }: Cell): Fault => ({ at: id, about: id, message: [`${label} has no settled value.`] });

/** About a thousandth of what an input usually goes through; a power of two, which divides without rounding. */
function small({ slider, hard }: Input<number>, rest: number): number {
  const range = slider ?? hard;
  return 2 ** Math.round(Math.log2(range ? range[1] - range[0] : Math.abs(rest) || 1) - 10);
}
