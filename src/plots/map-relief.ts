import { ticks } from 'd3-array';
import { contourLines } from './contour.ts';
import { betweenStanding, combined, filledIn, type Grid, type Place, refined } from './grid.ts';
import { extent } from './line-figure.ts';
import type { MapGround } from './map-figure.ts';

/** A map as surfaces without gaps, fine enough to draw lines of. */
export interface Relief {
  /** With its gaps, as far as it has been worked out. */
  readonly known: Grid;
  readonly value: Grid;
  /** The value less each edge, and less each of the others: zero on the line. */
  readonly over: readonly Grid[];
  readonly overOthers: readonly Grid[];
  /** The lines of each edge. */
  readonly edges: readonly (readonly (readonly Place[])[])[];
}
/** Points each way that lines are drawn of, at least. */
const enough = 48;

/** The surfaces of a map; null while not even its corners have been worked out. */
export function reliefOf({ grid, stands, edges, others }: MapGround): Relief | null {
  const shown = (of: Grid): Grid | null =>
    stands && of.across === grid.across && of.up === grid.up ? betweenStanding(of, stands) : of;
  const known = shown(grid);
  if (!known) return null;
  const times = Math.max(1, Math.ceil(enough / Math.max(1, Math.min(grid.across, grid.up) - 1)));
  const value = refined(filledIn(known), times);
  const less = (edge: Grid): Grid => combined(value, filledIn(shown(edge) ?? edge), (a, b) => a - b);
  const over = edges.map(less);
  return {
    known,
    value,
    over,
    overOthers: others.map(less),
    edges: over.map((surface) => contourLines(surface, 0)),
  };
}

/** Values that lines are drawn for, with the text that stands on them. */
export type Levels = readonly (readonly [level: number, figure: string])[];

/** The even values that lines are drawn for, with the text that stands on them. */
export function levelsOf({ known, over, overOthers, value }: Relief): Levels {
  const range = extent([known.values]);
  if (!range || !(range[1] > range[0])) return [];
  const all = ticks(range[0], range[1], over.length > 0 ? 8 : 5);
  const step = all.length > 1 ? all[1]! - all[0]! : 1;
  // An edge that is the same all over has its own value on it: no other line runs beside it.
  const straight = [...over, ...overOthers].flatMap((surface) => {
    const edge = Array.from(surface.values, (v, n) => value.values[n]! - v);
    const [low, high] = extent([edge])!;
    return high - low < step * 0.02 ? [(low + high) / 2] : [];
  });
  const digits = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  return all
    .filter((level) => level > range[0] && level < range[1])
    .filter((level) => !straight.some((edge) => Math.abs(edge - level) < step * 0.15))
    .map((level) => [level, level.toFixed(digits).replace('-', '−')]);
}
