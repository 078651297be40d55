import type { Tone } from '../graph/kind.ts';
import { line, path, text } from './drawing.ts';
import { deserved, type Histogram, type Zone } from './histogram-figure.ts';
import { spacedOut } from './line-figure.ts';

export const letter = 8; // px, about

export const cut = (at: number, low: number, high: number): number => Math.min(high, Math.max(low, at));

export interface Word {
  readonly label: string;
  readonly tone: Tone;
  readonly x: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly row: number;
}
/** The word of each band in sight, in its own row where one of them is wider than its band. */
export function zoneWords(
  zones: readonly Zone[],
  x: (value: number) => number,
  [left, right]: readonly [number, number],
): readonly Word[] {
  const seen = zones
    .map((zone) => ({
      ...zone,
      a: zone.from === null ? left : cut(x(zone.from), left, right),
      b: zone.to === null ? right : cut(x(zone.to), left, right),
    }))
    .filter(({ a, b }) => b - a > 4);
  const isTight = seen.some(({ a, b, label }) => b - a < label.length * letter + 16);
  return seen.map(({ label, tone, a, b }, i) => {
    const room = label.length * letter + 8;
    const anchor = a + room < right ? 'start' : 'end';
    return { label, tone, anchor, x: anchor === 'start' ? a + 8 : Math.min(b, right) - 8, row: isTight ? i : 0 };
  });
}

interface Room {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
}
/** 5 %, the middle and 95 %, each a line with its value. */
export function placesMarked(of: Histogram, x: (value: number) => number, { left, right, bottom }: Room): string {
  const value = deserved(of);
  const said = [`5 % under ${value(of.low)}`, `half under ${value(of.middle)}`, `95 % under ${value(of.high)}`];
  const places = [of.low, of.middle, of.high].map(x);
  const half = (said.reduce((most, words) => Math.max(most, words.length), 0) * letter) / 2;
  const [first, last] = spacedOut([places[0]!, places[2]!], 2 * half + 10, right - half) as [number, number];
  const at = [Math.max(left - 36 + half, first), cut(places[1]!, left + half, right - half), last];
  return places
    .map((place, i) => {
      const isMiddle = i === 1;
      const words = text(at[i]!, isMiddle ? 50 : 34, said[i]!, 'middle', 'strong', halo);
      const from = isMiddle ? 54 : 38;
      return (
        line(place, from, place, bottom, 'stroke="var(--paper)" stroke-width="3.5" opacity=".7"') +
        line(
          place,
          from,
          place,
          bottom,
          `stroke="var(--ink)" stroke-width="1.25"${isMiddle ? '' : ' stroke-dasharray="6 4"'}`,
        ) +
        words
      );
    })
    .join('');
}
const halo = 'style="paint-order:stroke;stroke:var(--paper);stroke-width:4px;stroke-linejoin:round"';

export const hereSaid = (of: Histogram): string => `now ${deserved(of)(of.here)}`;
/** The present value: a point under the axis, in the place of the figures near it. */
export function hereMarked(of: Histogram, at: number, { left, right, bottom }: Room): string {
  const words = hereSaid(of);
  const half = (words.length * letter) / 2;
  return (
    path(`M${at.toFixed(1)} ${bottom + 1}l5 8h-10z`, 'fill="var(--l1)"') +
    text(cut(at, left + half, right - half), bottom + 22.5, words, 'middle', 'strong')
  );
}
