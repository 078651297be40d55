import { line, type Sheet } from './drawing.ts';

/** A curve's value at x, between its samples; its ends beyond them. */
export function valueAt(
  { x, y }: { readonly x: ArrayLike<number>; readonly y: ArrayLike<number> },
  at: number,
): number {
  let low = 0;
  let high = x.length - 1;
  if (at <= x[low]!) return y[low]!;
  if (at >= x[high]!) return y[high]!;
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (x[mid]! <= at) low = mid;
    else high = mid;
  }
  return y[low]! + ((y[high]! - y[low]!) * (at - x[low]!)) / (x[high]! - x[low]!);
}

const cycle = 4 * Math.PI;

/** Where the crank cursor of the page stands on an axis, if it does; angles from firing top dead center. */
export const cursorOn = ({ cursor }: Sheet, from: number, to: number): number | undefined =>
  cursor === undefined ? undefined : [cursor - cycle, cursor, cursor + cycle].find((a) => a >= from && a <= to);

/** The cursor itself, a line down the figure. */
export function cursorLine(
  sheet: Sheet,
  x: (angle: number) => number,
  from: number,
  to: number,
  top: number,
  bottom: number,
): string {
  const at = cursorOn(sheet, from, to);
  return at === undefined ? '' : line(x(at), top, x(at), bottom, 'class="cursor"');
}
