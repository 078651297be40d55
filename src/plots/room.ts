import type { Place } from './grid.ts';

/** A box in px. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
export const touch = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** What words take up, with a little room on each side. */
const sizeOf = (words: string): { readonly width: number; readonly height: number } => ({
  width: words.length * 7.3 + 8,
  height: 18,
});
const isIn = (box: Box, frame: Box, by: number): boolean =>
  box.x >= frame.x + by &&
  box.y >= frame.y + by &&
  box.x + box.width <= frame.x + frame.width - by &&
  box.y + box.height <= frame.y + frame.height - by;
const grown = ({ x, y, width, height }: Box, by: number): Box => ({
  x: x - by,
  y: y - by,
  width: width + 2 * by,
  height: height + 2 * by,
});

/** Shares of a line's length at which words are tried. */
export const middleFirst: readonly number[] = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9];
export const sidesFirst: readonly number[] = [0.26, 0.74, 0.2, 0.8, 0.34, 0.66, 0.42, 0.58, 0.5, 0.12, 0.88];

/** Where words can stand on a line of places in px, clear of what is `taken`; null where there is no room. */
export function placeOn(
  line: readonly Place[],
  words: string,
  frame: Box,
  taken: readonly Box[],
  isFree: (x: number, y: number) => boolean,
  shares: readonly number[],
): Box | null {
  const lengths = [0];
  for (let n = 1; n < line.length; n++)
    lengths.push(lengths[n - 1]! + Math.hypot(line[n]![0] - line[n - 1]![0], line[n]![1] - line[n - 1]![1]));
  const whole = lengths.at(-1)!;
  const { width, height } = sizeOf(words);
  if (whole < 1.6 * width) return null;
  for (const share of shares) {
    const n = lengths.findIndex((length) => length >= share * whole);
    const [x, y] = line[n]!;
    const box = { x: x - width / 2, y: y - height / 2, width, height };
    if (isFree(x, y) && isIn(box, frame, 4) && !taken.some((other) => touch(grown(box, 6), other))) return box;
  }
  return null;
}

/**
 * Where words can stand with all their corners where it is free: as far from the middle of the frame as there is, and
 * better off the lines, which are given as places along them.
 */
export function freePlace(
  words: string,
  frame: Box,
  taken: readonly Box[],
  lines: readonly Place[],
  isFree: (x: number, y: number) => boolean,
): Box | null {
  const { width, height } = sizeOf(words);
  const [cx, cy] = [frame.x + frame.width / 2, frame.y + frame.height / 2];
  const onLine = ({ x, y }: Box): boolean =>
    lines.some(([px, py]) => px > x && px < x + width && py > y - 2 && py < y + height + 2);
  let best: Box | null = null;
  let most = -Infinity;
  for (let y = frame.y + 4; y + height <= frame.y + frame.height - 4; y += 9)
    for (let x = frame.x + 4; x + width <= frame.x + frame.width - 4; x += 12) {
      const box = { x, y, width, height };
      const away = Math.abs(x + width / 2 - cx) / frame.width + Math.abs(y + height / 2 - cy) / frame.height;
      if (away <= most || taken.some((other) => touch(grown(box, 4), other))) continue;
      const around = [0, 0.5, 1].flatMap((a) => [0, 1].map((b) => [x + a * width, y + b * height] as const));
      if (!around.every(([px, py]) => isFree(px, py))) continue;
      const worth = onLine(box) ? away - 1 : away;
      if (worth > most) [best, most] = [box, worth];
    }
  return best;
}
