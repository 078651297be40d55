import type { Cell } from './cell.ts';
import { upstream } from './compile.ts';
import type { Snapshot } from './snapshot.ts';

/** A figure that stands by itself and is known to a ±, both SI. */
export interface Toleranced {
  readonly cell: Cell;
  readonly value: number;
  readonly tolerance: number;
}

/** Those of the tolerances that belong to an input, or a held cell, with a figure. */
export function toleranced(at: Snapshot, tolerances: ReadonlyMap<Cell, number>): readonly Toleranced[] {
  return [...tolerances].flatMap(([cell, tolerance]) => {
    const slot = at.graph.slotOf.get(cell);
    if (slot === undefined || !at.stands(slot) || !(tolerance > 0)) return [];
    const state = at.state(slot);
    return state.is === 'ready' && typeof state.value === 'number' ? [{ cell, value: state.value, tolerance }] : [];
  });
}

/** Those of them that some results stand on. */
export function bearingOn(
  at: Snapshot,
  reads: readonly Cell[],
  tolerances: ReadonlyMap<Cell, number>,
): readonly Toleranced[] {
  const { graph } = at;
  const stands = upstream(
    graph,
    reads.map((read) => graph.slotOf.get(read)!),
    at.stands,
  );
  return toleranced(at, tolerances).filter(({ cell }) => stands[graph.slotOf.get(cell)!] === 1);
}
