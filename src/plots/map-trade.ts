import { between, type Grid, type Place } from './grid.ts';
import type { Axis } from './line-figure.ts';
import { graverAt, type MapGround, type MapPicture } from './map-figure.ts';
import type { Relief } from './map-relief.ts';

/** How much of y makes up for how much of x, so that the result or its distance from an edge stays the same. */
export interface Trade {
  /** The word that begins at the edge, or null where it is a line of equal value. */
  readonly word: string | null;
  /** In the units shown. */
  readonly dx: number;
  readonly dy: number;
}

/**
 * What a step along x is worth in y: at the edge nearest to the present point if there is one on the map, else at the
 * point itself. Null where there is no telling, or it would take more of y than the map shows.
 */
export function tradeOf({ ground, mark }: MapPicture, relief: Relief): Trade | null {
  const { value, over, edges } = relief;
  const { x, y } = ground;
  if (!mark) return null;
  const here = onGrid(ground, mark, value);
  let at: Place = here;
  let surface = value;
  let word: string | null = null;
  let near = Infinity;
  edges.forEach((lines, i) => {
    for (const line of lines)
      for (const [u, v] of line) {
        const away = Math.hypot((u - here[0]) / (value.across - 1), (v - here[1]) / (value.up - 1));
        if (away >= near) continue;
        [at, surface, near, word] = [[u, v], over[i]!, away, graverAt(ground, i).label];
      }
  });
  const [u, v] = [Math.min(value.across - 2, Math.max(1, at[0])), Math.min(value.up - 2, Math.max(1, at[1]))];
  const slope =
    -(between(surface, u + 1, v) - between(surface, u - 1, v)) /
    (between(surface, u, v + 1) - between(surface, u, v - 1));
  const [wide, tall] = [x, y].map(({ domain: [from, to] }) => to - from) as [number, number];
  const dx = evenStep(Math.abs(wide) / 8);
  const dy = (dx * slope * (tall / (value.up - 1))) / (wide / (value.across - 1));
  return Number.isFinite(dy) && Math.abs(dy) < Math.abs(tall) && Math.abs(dy) > Math.abs(tall) / 1000
    ? { word, dx, dy }
    : null;
}
/** The mark's place on a grid over the same axes. */
function onGrid({ x, y }: MapGround, mark: { readonly x: number; readonly y: number }, { across, up }: Grid): Place {
  const share = ({ domain: [from, to] }: Axis, value: number): number => (value - from) / (to - from);
  return [share(x, mark.x) * (across - 1), share(y, mark.y) * (up - 1)];
}
/** The largest of 1, 2 and 5 times a power of ten that is no larger. */
function evenStep(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most) + 1e-9);
  return power * ([5, 2].find((n) => n * power <= most * (1 + 1e-9)) ?? 1);
}
