const bases = [2, 3, 5, 7];

/**
 * A point of a sequence that fills a cube evenly, however many of its points are taken.
 *
 * @param i which point, from 1
 * @param dimensions how many coordinates, at most 4
 * @returns coordinates from 0 up to 1
 * @throws RangeError for more coordinates
 * Source: J. H. Halton, Numerische Mathematik 2 (1960) 84-90 (from memory).
 */
export function halton(i: number, dimensions: number): number[] {
  if (dimensions > bases.length) throw new RangeError('The sequence has at most four coordinates.');
  return bases.slice(0, dimensions).map((base) => mirrored(i, base));
}

/** The digits of a whole number mirrored behind the point. */
function mirrored(i: number, base: number): number {
  let [rest, share, sum] = [i, 1 / base, 0];
  for (; rest > 0; share /= base) {
    sum += (rest % base) * share;
    rest = Math.floor(rest / base);
  }
  return sum;
}
