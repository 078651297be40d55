import { area, line } from 'd3-shape';
import type { Band, Line } from './line-figure.ts';

type Scale = (value: number) => number;

const indices = (n: number): number[] => Array.from({ length: n }, (_, i) => i);

/** The path of a line on two scales; faulted points are gaps. */
export function linePath({ xs, ys, dots }: Line, x: Scale, y: Scale): string {
  const all = indices(xs.length);
  return (
    line<number>()
      .defined((i) => Number.isFinite(ys[i]!))
      .x((i) => x(xs[i]!))
      .y((i) => y(ys[i]!))(dots === 'some' ? all.filter((i) => Number.isFinite(ys[i]!)) : all) ?? ''
  );
}
/** The dots of a line, hollow where it says so. */
export function lineDots({ xs, ys, dots, hollow = [] }: Line, x: Scale, y: Scale, color: string): string {
  if (!dots) return '';
  return indices(xs.length)
    .filter((i) => Number.isFinite(ys[i]!))
    .map(
      (i) =>
        `<circle cx="${x(xs[i]!).toFixed(1)}" cy="${y(ys[i]!).toFixed(1)}" r="3" fill="${hollow.includes(i) ? 'var(--paper)' : color}" stroke="${color}" stroke-width="1.5"/>`,
    )
    .join('');
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
