import { crossing } from './crossing.ts';
import type { Range } from './cell.ts';

/** How far off its aim a shift leaves a cell; NaN where it has no answer. */
type Miss = (shift: number) => number;

/** Where a search starts, and what it knows of the way. */
interface Way {
  readonly from: number;
  /** How steeply the cell rises with the shift; undefined before the first search. */
  readonly slope: number | undefined;
  /** A thousandth of what the shifted inputs usually go through. */
  readonly small: number;
  readonly range: Range;
}

/**
 * The shift that brings a cell to its aim, and the slope it started with; null where there is none in reach. Nearly
 * all relations are straight lines, and a secant is there in a step; else it walks both ways for a change of sign.
 */
export function findShift(
  miss: Miss,
  way: Way,
): { readonly shift: number; readonly slope: number; readonly start: number } | null {
  const { from, small } = way;
  const start = miss(from);
  const slope = way.slope ?? (miss(from + small) - start) / small;
  let [shift, off, rise, hold] = [from, start, slope, 1];
  for (let turn = 0; turn < 32 && !isClose(off, rise, small); turn++) {
    const next = shift - off / rise / hold;
    const nextOff = Number.isFinite(next) ? miss(next) : NaN;
    if (Math.abs(nextOff) < Math.abs(off)) {
      rise = (nextOff - off) / (next - shift);
      [shift, off, hold] = [next, nextOff, 1];
    } else if (isNear(off, rise, small)) break;
    else hold *= 2; // too far, or lost
  }
  const there = isNear(off, rise, small);
  if (there && shift >= way.range[0] && shift <= way.range[1]) return { shift, slope, start };
  const found = [small, -small]
    .map((step) => walk(miss, from, start, step, way.range))
    .filter((s) => s !== null)
    .toSorted((a, b) => Math.abs(a - from) - Math.abs(b - from))[0];
  // One out of range says more than none: which input would have to leave its range.
  return found !== undefined ? { shift: found, slope, start } : there ? { shift, slope, start } : null;
}

/** Near enough where rounding lets it come no nearer. */
const isNear = (off: number, slope: number, small: number): boolean =>
  off === 0 || Math.abs(off) <= Math.abs(slope) * small * 1e-6;
/** As near as rounding lets a relation of this slope come. */
export const isClose = (off: number, slope: number, small: number): boolean =>
  Math.abs(off) <= Math.abs(slope) * small * 1e-11;

/** Goes one way in steps that double, and halve again for good once there is no answer ahead. */
function walk(miss: Miss, from: number, start: number, first: number, [low, high]: Range): number | null {
  let [at, off, step, grow] = [from, start, first, 2];
  for (let turn = 0; turn < 100; turn++) {
    const next = Math.min(high, Math.max(low, at + step));
    if (next === at) return null;
    const nextOff = miss(next);
    if (Number.isNaN(nextOff)) {
      grow = 1;
      step /= 2;
      continue;
    }
    if (off * nextOff <= 0) return crossing(miss, at, next);
    [at, off, step] = [next, nextOff, step * grow];
  }
  return null;
}
