import type { Cell } from './cell.ts';
import { upstream } from './compile.ts';
import { numeric } from './numeric.ts';
import { Probe } from './probe.ts';
import type { Snapshot } from './snapshot.ts';

/** How far a result moves for the tolerance of one of the cells it stands on. */
export interface Share {
  readonly cell: Cell;
  readonly tolerance: number;
  readonly change: number;
}
export interface Spread {
  /** Root of the sum of squares of the shares: each ± is a bound, and they rarely all lean one way. First order. */
  readonly plusMinus: number;
  /** Largest first. */
  readonly shares: readonly Share[];
}

/** The ± of a numeric result from the tolerances (SI) of inputs and held cells. Throws NotSettled if it has to wait. */
export function spread(at: Snapshot, read: Cell, tolerances: ReadonlyMap<Cell, number>): Spread {
  const { slotOf } = at.graph;
  const stands = upstream(at.graph, [slotOf.get(read)!], at.stands);
  const shares: Share[] = [];
  for (const [cell, tolerance] of tolerances) {
    const slot = slotOf.get(cell);
    if (slot === undefined || stands[slot] === 0 || !at.stands(slot) || !(tolerance > 0)) continue;
    const state = at.states[slot]!;
    if (state.is !== 'ready' || typeof state.value !== 'number') continue;
    const change = halfRange(new Probe(at, [cell], [read]), state.value, tolerance);
    if (change > 0) shares.push({ cell, tolerance, change });
  }
  shares.sort((a, b) => b.change - a.change);
  return { plusMinus: Math.hypot(...shares.map((s) => s.change)), shares };
}

/** Half the difference between both ends; one-sided where an end has no answer. */
function halfRange(probe: Probe, value: number, tolerance: number): number {
  const at = (x: number): number => {
    try {
      probe.put(0, x);
      probe.run();
      return numeric(probe.get(0));
    } catch {
      return NaN;
    }
  };
  const [low, here, high] = [at(value - tolerance), at(value), at(value + tolerance)];
  const change = Number.isNaN(low) ? high - here : Number.isNaN(high) ? here - low : (high - low) / 2;
  return Number.isNaN(change) ? 0 : Math.abs(change);
}
