import { line, text } from './drawing.ts';

/** The left and right edge, or the top and bottom one, px. */
export type Span = readonly [number, number];

/** A figure on an axis, with a minus sign that is one. */
export const tick = (value: number): string => String(value).replace('-', '−');

/** A figure with some decimals; what rounds to nothing has no sign. */
export function fixed(value: number, digits: number): string {
  const shown = value.toFixed(digits);
  return Number(shown) === 0 ? shown.replace('-', '') : shown.replace('-', '−');
}

/** Dotted level lines with their figures at the left, as every figure has them. */
export const levels = (
  y: (value: number) => number,
  ticks: readonly number[],
  [left, right]: Span,
  shown: (value: number) => string = tick,
): string =>
  ticks.map((t) => line(left, y(t), right, y(t), 'class="grid"') + text(left - 8, y(t) + 4, shown(t), 'end')).join('');

/** About how wide words are in the figures' type, px, heavy ones too. */
export const widthOf = (words: string): number => words.length * 7;

/** A place for words of an anchor that keeps all of them between two edges. */
export function kept(x: number, words: string, anchor: 'start' | 'middle' | 'end', [left, right]: Span): number {
  const wide = widthOf(words);
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? wide / 2 : wide;
  return Math.max(left + before, Math.min(right - (wide - before), x));
}
