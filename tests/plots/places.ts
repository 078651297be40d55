import { type Element } from './markup.ts';

/** The points of a path's straight pieces, or the ends of its curved ones. */
export const spotsOf = (d: string): [x: number, y: number][] =>
  [...d.matchAll(/(?:^|[MLC, ])(-?[\d.]+)[ ,](-?[\d.]+)(?=$|[MLCZ])/g)].map((m) => [Number(m[1]), Number(m[2])]);

/** How an axis turns its values into px, read off the figures that stand on it. */
export function scaleOf(
  elements: readonly Element[],
  axis: 'x' | 'y',
  isOnIt: (e: Element) => boolean,
): (value: number) => number {
  const marks = elements
    .filter((e) => e.name === 'text' && /^−?[\d.]+°?$/.test(e.text) && isOnIt(e))
    .map(
      (e) =>
        [Number.parseFloat(e.text.replace('−', '-')), Number(e.attributes[axis]) - (axis === 'y' ? 4 : 0)] as const,
    )
    .toSorted((a, b) => a[0] - b[0]);
  const [[v0, p0], [v1, p1]] = [marks[0]!, marks.at(-1)!];
  if (v0 === v1) throw new Error('An axis needs two figures.');
  return (value) => p0 + ((p1 - p0) * (value - v0)) / (v1 - v0);
}
/** Figures under the plot, and those left of it. */
export const under = (e: Element): boolean =>
  e.attributes['text-anchor'] === 'middle' && e.attributes.class === undefined;
export const leftOf = (e: Element): boolean => e.attributes['text-anchor'] === 'end' && Number(e.attributes.x) < 50;
