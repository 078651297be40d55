import type { Cell } from './cell.ts';
import type { Graph } from './compile.ts';
import type { Live } from './live.ts';
import type { State } from './state.ts';

/** Settled values of a graph at one moment, from which what-ifs start. Live values are not touched by them. */
export interface Snapshot {
  readonly graph: Graph;
  readonly states: readonly State[];
  /** Inputs, and derived cells that are held: what stands by itself. */
  readonly stands: (slot: number) => boolean;
}

export function snapshot(live: Live): Snapshot {
  const { order } = live.graph;
  const stands = Uint8Array.from(order, (c) => (c.role === 'input' || live.isHeld(c) ? 1 : 0));
  return { graph: live.graph, states: order.map((c) => live.state(c)), stands: (slot) => stands[slot] === 1 };
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
