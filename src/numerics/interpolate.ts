/**
 * A straight-line reading of a table, held at its first and last entries outside them.
 *
 * @param xs where the table has entries, increasing
 * @param ys the entries, one for each x
 * @param x where to read
 * @returns the reading, in the unit of ys; not a number where x is not
 * @throws RangeError when the table is empty or its columns differ in length
 */
export function interpolate(xs: ArrayLike<number>, ys: ArrayLike<number>, x: number): number {
  if (xs.length === 0) throw new RangeError('The table has no rows to read from.');
  if (xs.length !== ys.length) throw new RangeError('The two columns of the table differ in length.');
  let below = 0;
  let above = xs.length - 1;
  if (x <= xs[below]!) return ys[below]!;
  if (x >= xs[above]!) return ys[above]!;
  while (above - below > 1) {
    const middle = (below + above) >> 1;
    if (xs[middle]! > x) above = middle;
    else below = middle;
  }
  const share = (x - xs[below]!) / (xs[above]! - xs[below]!);
  return ys[below]! + share * (ys[above]! - ys[below]!);
}
