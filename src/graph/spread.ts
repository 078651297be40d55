import type { Cell, Steps } from './cell.ts';
import { downstream, upstream } from './compile.ts';
import { numeric } from './numeric.ts';
import { Probe } from './probe.ts';
import type { Snapshot } from './snapshot.ts';
import { bearingOn, toleranced } from './toleranced.ts';

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

/**
 * The ± of several results from the tolerances (SI) of inputs and held cells; each tolerance is looked at once, for all
 * of them together. A result that is not settled, or that stands on slow work, has none.
 */
export function spreads(
  at: Snapshot,
  reads: readonly Cell[],
  tolerances: ReadonlyMap<Cell, number>,
): ReadonlyMap<Cell, Spread> {
  const { slotOf } = at.graph;
  const shares = new Map<Cell, Share[]>();
  const values = new Map<Cell, number>();
  for (const read of reads) {
    const slot = slotOf.get(read)!;
    const state = at.state(slot);
    if (state.is !== 'ready' || (at.graph.quick[slot] === 0 && isSlow(at, slot))) continue;
    shares.set(read, []);
    values.set(read, numeric(state.value));
  }
  for (const { cell, value, tolerance } of toleranced(at, tolerances)) {
    const reached = downstream(at.graph, [slotOf.get(cell)!], at.stands);
    const here = [...shares.keys()].filter((read) => reached[slotOf.get(read)!] === 1);
    const probe = new Probe(at, [cell], here);
    const [low, high] = [value - tolerance, value + tolerance].map((x) => {
      probe.put(0, x);
      probe.tryRun();
      return here.map((_, j) => numeric(probe.tryGet(j)));
    }) as [number[], number[]];
    here.forEach((read, j) => {
      const change = halfRange(low[j]!, values.get(read)!, high[j]!);
      if (change > 0) shares.get(read)!.push({ cell, tolerance, change });
    });
  }
  return new Map([...shares].map(([read, all]) => [read, together(all)]));
}

/**
 * The shares of one result, slow or not, one tolerance after another: both of its ends are worked out, as for a point of
 * a sweep. Yields those found so far, largest first. Throws NotSettled at once if it has to wait.
 */
export function* shareSteps(at: Snapshot, read: Cell, tolerances: ReadonlyMap<Cell, number>): Steps<readonly Share[]> {
  const bearing = bearingOn(at, [read], tolerances);
  const probe = new Probe(
    at,
    bearing.map((b) => b.cell),
    [read],
  );
  const figure = (): number => {
    probe.tryRun();
    return numeric(probe.tryGet(0));
  };
  const here = figure();
  const ends = 2 * bearing.length + 1;
  yield 1 / ends;
  let shares: readonly Share[] = [];
  for (const [k, { cell, value, tolerance }] of bearing.entries()) {
    probe.put(k, value - tolerance);
    const low = figure();
    yield (2 * k + 2) / ends;
    probe.put(k, value + tolerance);
    const change = halfRange(low, here, figure());
    probe.put(k, value);
    if (change > 0) shares = largestFirst([...shares, { cell, tolerance, change }]);
    yield { value: shares, done: (2 * k + 3) / ends };
  }
  return shares;
}

/** True if a result stands on slow work that nothing held keeps from it. */
function isSlow(at: Snapshot, slot: number): boolean {
  const stands = upstream(at.graph, [slot], at.stands);
  return at.graph.order.some((c, i) => stands[i] === 1 && c.role === 'slow' && !at.stands(i));
}

const largestFirst = (shares: readonly Share[]): readonly Share[] => shares.toSorted((a, b) => b.change - a.change);
/** Shares as a spread. */
export const together = (shares: readonly Share[]): Spread => ({
  plusMinus: Math.hypot(...shares.map((s) => s.change)),
  shares: largestFirst(shares),
});

/** Half the difference between both ends; one-sided where an end has no answer. */
function halfRange(low: number, here: number, high: number): number {
  const change = Number.isNaN(low) ? high - here : Number.isNaN(high) ? here - low : (high - low) / 2;
  return Number.isNaN(change) ? 0 : Math.abs(change);
}
