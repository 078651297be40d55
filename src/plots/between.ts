/**
 * A smooth curve through points: cubics whose slope at each point is that of the parabola through it and its neighbors.
 * Held at the ends.
 *
 * @param xs rising
 */
export function between(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  const last = xs.length - 1;
  const steep = (i: number): number => (ys[i + 1]! - ys[i]!) / (xs[i + 1]! - xs[i]!);
  const slope = (i: number): number => {
    if (last === 1) return steep(0);
    const middle = Math.min(last - 1, Math.max(1, i));
    const [before, after] = [steep(middle - 1), steep(middle)];
    const bend = (after - before) / (xs[middle + 1]! - xs[middle - 1]!);
    return before + bend * (2 * xs[i]! - xs[middle - 1]! - xs[middle]!);
  };
  return (x) => {
    if (last < 1 || x <= xs[0]!) return ys[0]!;
    if (x >= xs[last]!) return ys[last]!;
    const i = xs.findIndex((_, k) => xs[k + 1]! > x);
    const wide = xs[i + 1]! - xs[i]!;
    const t = (x - xs[i]!) / wide;
    return (
      ys[i]! * (1 + 2 * t) * (1 - t) ** 2 +
      ys[i + 1]! * (3 - 2 * t) * t * t +
      wide * t * (1 - t) * ((1 - t) * slope(i) - t * slope(i + 1))
    );
  };
}
