import type { Cell, Pure } from './cell.ts';
import type { Graph } from './compile.ts';
import type { Live } from './live.ts';
import { computeNow, gather } from './settle.ts';
import { lastGood, type State } from './state.ts';

/**
 * The values of a graph at one moment, from which what-ifs start. Live values are not touched by them. What is quick and
 * was not looked at is worked out, from the values of that moment, when it is asked for.
 */
export interface Snapshot {
  readonly graph: Graph;
  readonly state: (slot: number) => State;
  /** Inputs, and derived cells that are held: what stands by itself. */
  readonly stands: (slot: number) => boolean;
}

export function snapshot(live: Live): Snapshot {
  const { graph } = live;
  const { order } = graph;
  const { states, stands, stale: left } = live.moment();
  const state = (slot: number): State => {
    if (left[slot] === 1) {
      left[slot] = 0;
      states[slot] = workedOut(slot);
    }
    return states[slot]!;
  };
  const workedOut = (slot: number): State => {
    const last = lastGood(states[slot]!);
    const given: Record<string, unknown> = {};
    const got = gather(graph, state, slot, given);
    if (got.is === 'fault') return { is: 'fault', last, fault: got.fault };
    if (got.is === 'waiting') return { is: 'waiting', last, done: 0 };
    return computeNow(order[slot] as Pure, given, got, last);
  };
  return { graph, state, stands: (slot) => stands[slot] === 1 };
}

/** Why a what-if has to wait: a cell it reads, outside its own path, has no settled value. */
export class NotSettled extends Error {
  readonly cell: Cell;
  readonly state: State;
  constructor(cell: Cell, state: State) {
    super(`${cell.label} has no settled value`);
    this.cell = cell;
    this.state = state;
  }
}
