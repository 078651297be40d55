import { contours } from 'd3-contour';
import type { Grid, Place } from './grid.ts';

/** A ring of places, its last the same as its first. */
type Ring = readonly Place[];

/** The rings round where a grid without gaps is at or above a value: outer ones and holes, for the even-odd rule. */
export function region(grid: Grid, value: number): readonly Ring[] {
  return rings(grid, value).map((ring) => ring.map((place) => inside(grid, place)));
}

/** The lines on which a grid without gaps has a value; a closed one ends where it begins. */
export function contourLines(grid: Grid, value: number): readonly (readonly Place[])[] {
  return rings(grid, value).flatMap((ring) => withoutBorder(grid, ring));
}

/** The rings round where there are answers: a cell of the grid counts as far as the corners it has. */
export function answered({ across, up, values }: Grid): readonly Ring[] {
  const has = Float64Array.from(values, (v) => (Number.isNaN(v) ? 0 : 1));
  return region({ across, up, values: has }, 1 - 1e-6);
}

/** d3-contour counts from half a spacing before the first point, and goes half a spacing beyond the ends. */
function rings({ across, up, values }: Grid, value: number): readonly Ring[] {
  if (across < 2 || up < 2) return [];
  const { coordinates } = contours()
    .size([across, up])
    .contour(values as number[], value);
  return coordinates.flatMap((polygon) => polygon.map((ring) => ring.map(([u, v]): Place => [u! - 0.5, v! - 0.5])));
}
const inside = ({ across, up }: Grid, [u, v]: Place): Place => [
  Math.min(across - 1, Math.max(0, u)),
  Math.min(up - 1, Math.max(0, v)),
];

/** What is left of a ring without the parts that only close it along the ends of the grid. */
function withoutBorder(grid: Grid, ring: Ring): readonly (readonly Place[])[] {
  const { across, up } = grid;
  const isOut = ([u, v]: Place): boolean => u < 0 || v < 0 || u > across - 1 || v > up - 1;
  const start = ring.findIndex(isOut);
  if (start < 0) return [ring];
  // From a place outside on, so that no line is cut where the ring happens to begin.
  const turned = [...ring.slice(start), ...ring.slice(1, start + 1)];
  const lines: Place[][] = [];
  let line: Place[] = [];
  for (const place of turned)
    if (!isOut(place)) line.push(place);
    else {
      if (line.length > 1) lines.push(line);
      line = [];
    }
  return lines;
}
