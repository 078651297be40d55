import { area, line } from 'd3-shape';
import type { Band, Line } from './line-figure.ts';

type Scale = (value: number) => number;

const indices = (n: number): number[] => Array.from({ length: n }, (_, i) => i);

/** The path of a line on two scales; faulted points are gaps. */
export function linePath({ xs, ys }: Line, x: Scale, y: Scale): string {
  return (
    line<number>()
      .defined((i) => Number.isFinite(ys[i]!))
      .x((i) => x(xs[i]!))
      .y((i) => y(ys[i]!))(indices(xs.length)) ?? ''
  );
}

/** The area of a band between its edges, or out to the edge of the plot, cut off there. */
export function bandPath(
  { xs, low, high }: Band,
  x: Scale,
  y: Scale,
  [top, bottom]: readonly [number, number],
): string {
  const cut = (v: number): number => Math.min(bottom, Math.max(top, v));
  return (
    area<number>()
      .defined((i) => (low === null || Number.isFinite(low[i]!)) && (high === null || Number.isFinite(high[i]!)))
      .x((i) => x(xs[i]!))
      .y0((i) => (low === null ? bottom : cut(y(low[i]!))))
      .y1((i) => (high === null ? top : cut(y(high[i]!))))(indices(xs.length)) ?? ''
  );
}
