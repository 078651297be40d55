import type { Cell, Range } from './cell.ts';
import { crossing } from './crossing.ts';
import { numeric } from './numeric.ts';
import { Probe } from './probe.ts';
import type { Snapshot } from './snapshot.ts';

/** The values of one cell at which a result reaches a target; where there are none, the nearest it comes. */
export interface Solution {
  readonly values: readonly number[];
  readonly nearest: { readonly at: number; readonly gives: number } | null;
}

const pieces = 64;

/**
 * Finds where `read` equals `target` as `vary` goes through a range (all SI): looks for changes of sign on an even
 * grid, then closes in. Two answers within one sixty-fourth of the range can hide each other; a jump over the target
 * is none.
 */
export function solve(at: Snapshot, read: Cell, target: number, vary: Cell, [low, high]: Range): Solution {
  const probe = new Probe(at, [vary], [read]);
  const miss = (x: number): number => {
    try {
      probe.put(0, x);
      probe.run();
      return numeric(probe.get(0)) - target;
    } catch {
      return NaN;
    }
  };
  const xs = Array.from({ length: pieces + 1 }, (_, i) => low + ((high - low) * i) / pieces);
  const misses = xs.map(miss);
  const values: number[] = [];
  for (let i = 0; i < pieces; i++) {
    if (misses[i] === 0) values.push(xs[i]!);
    else if (misses[i]! * misses[i + 1]! < 0) {
      const found = crossing(miss, xs[i]!, xs[i + 1]!);
      if (found !== null) values.push(found);
    }
  }
  if (misses[pieces] === 0) values.push(high);
  if (values.length > 0) return { values, nearest: null };
  let best = -1;
  misses.forEach((m, i) => {
    if (!Number.isNaN(m) && (best < 0 || Math.abs(m) < Math.abs(misses[best]!))) best = i;
  });
  return { values, nearest: best < 0 ? null : { at: xs[best]!, gives: misses[best]! + target } };
}
