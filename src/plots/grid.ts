/** Values over evenly spaced places, row by row: the k-th of row i at i · across + k. NaN is no answer. */
export interface Grid {
  readonly across: number;
  readonly up: number;
  readonly values: ArrayLike<number>;
}
/** A place on a grid, counted in its spacings from the first point: [0, 0] to [across − 1, up − 1]. */
export type Place = readonly [u: number, v: number];

/** The value between four points of a grid, in straight lines; NaN where one of them is missing or beyond its ends. */
export function between({ across, up, values }: Grid, u: number, v: number): number {
  if (!(u >= 0 && v >= 0 && u <= across - 1 && v <= up - 1)) return NaN;
  const [k, i] = [Math.min(Math.floor(u), Math.max(0, across - 2)), Math.min(Math.floor(v), Math.max(0, up - 2))];
  const [a, b] = [u - k, v - i];
  // A point that has no share in the value may be missing.
  const of = (dk: number, di: number, share: number): number =>
    share === 0 ? 0 : share * values[(i + di) * across + k + dk]!;
  return of(0, 0, (1 - a) * (1 - b)) + of(1, 0, a * (1 - b)) + of(0, 1, (1 - a) * b) + of(1, 1, a * b);
}

const made = (across: number, up: number, value: (k: number, i: number) => number): Grid => {
  const values = new Float64Array(across * up);
  for (let i = 0; i < up; i++) for (let k = 0; k < across; k++) values[i * across + k] = value(k, i);
  return { across, up, values };
};

/** One grid over the same range made of two, in the spacing of the first. */
export function combined(a: Grid, b: Grid, of: (a: number, b: number) => number): Grid {
  const [du, dv] = [(b.across - 1) / (a.across - 1), (b.up - 1) / (a.up - 1)];
  return made(a.across, a.up, (k, i) => of(a.values[i * a.across + k]!, between(b, k * du, i * dv)));
}

/**
 * A grid without gaps: each missing value goes on in a straight line from the two points beside it, averaged over the
 * directions in which there are two. What is drawn of it is only what `answered` encloses.
 */
export function filledIn(grid: Grid): Grid {
  const { across, up } = grid;
  let values = Float64Array.from(grid.values);
  let left = values.reduce((n, v) => n + (Number.isNaN(v) ? 1 : 0), 0);
  if (left === values.length) return { across, up, values: values.fill(0) };
  while (left > 0) {
    const next = values.slice();
    const at = (k: number, i: number): number =>
      k >= 0 && i >= 0 && k < across && i < up ? values[i * across + k]! : NaN;
    for (let i = 0; i < up; i++)
      for (let k = 0; k < across; k++) {
        if (!Number.isNaN(values[i * across + k]!)) continue;
        const near: number[] = [];
        const lines: number[] = [];
        for (const [dk, di] of around) {
          const [one, two] = [at(k + dk, i + di), at(k + 2 * dk, i + 2 * di)];
          if (!Number.isNaN(one)) near.push(one);
          if (!Number.isNaN(2 * one - two)) lines.push(2 * one - two);
        }
        const from = lines.length > 0 ? lines : near;
        if (from.length === 0) continue;
        next[i * across + k] = from.reduce((sum, v) => sum + v, 0) / from.length;
        left--;
      }
    values = next;
  }
  return { across, up, values };
}
const around = [-1, 0, 1].flatMap((di) =>
  [-1, 0, 1].filter((dk) => dk !== 0 || di !== 0).map((dk) => [dk, di] as const),
);

/** The points of one row or column a grid `times` as fine takes, by Catmull and Rom's cubic, which goes through all. */
function finer(n: number, times: number, value: (k: number) => number, put: (k: number, value: number) => void): void {
  for (let k = 0; k < n; k++) {
    put(k * times, value(k));
    if (k === n - 1) return;
    const [p1, p2] = [value(k), value(k + 1)];
    // Beyond an end the line goes straight on.
    const p0 = k > 0 ? value(k - 1) : 2 * p1 - p2;
    const p3 = k < n - 2 ? value(k + 2) : 2 * p2 - p1;
    for (let s = 1; s < times; s++) {
      const t = s / times;
      const bend = t * (2 * p0 - 5 * p1 + 4 * p2 - p3 + t * (3 * (p1 - p2) + p3 - p0));
      put(k * times + s, p1 + 0.5 * t * (p2 - p0 + bend));
    }
  }
}
/** A grid without gaps, `times` as fine, smoothly through its points. */
export function refined(grid: Grid, times: number): Grid {
  const { across, up, values } = grid;
  if (times === 1) return grid;
  const wide = (across - 1) * times + 1;
  const rows = new Float64Array(wide * up);
  for (let i = 0; i < up; i++)
    finer(
      across,
      times,
      (k) => values[i * across + k]!,
      (k, value) => (rows[i * wide + k] = value),
    );
  const tall = (up - 1) * times + 1;
  const all = new Float64Array(wide * tall);
  for (let k = 0; k < wide; k++)
    finer(
      up,
      times,
      (i) => rows[i * wide + k]!,
      (i, value) => (all[i * wide + k] = value),
    );
  return { across: wide, up: tall, values: all };
}

/**
 * A grid of which not all points have been worked out: those to come lie between the points of the finest grid that is
 * whole, in straight lines. Null while not even the corners are there.
 */
export function betweenStanding(grid: Grid, stands: ArrayLike<number>): Grid | null {
  const { across, up, values } = grid;
  const isWhole = (step: number): boolean => {
    for (let i = 0; i < up; i += step)
      for (let k = 0; k < across; k += step) if (stands[i * across + k] !== 1) return false;
    return true;
  };
  const most = Math.min(across, up) - 1;
  const step = Array.from({ length: most }, (_, k) => k + 1).find(
    (by) => (across - 1) % by === 0 && (up - 1) % by === 0 && isWhole(by),
  );
  if (step === undefined) return null;
  if (step === 1) return grid;
  const coarse = made((across - 1) / step + 1, (up - 1) / step + 1, (k, i) => values[i * step * across + k * step]!);
  return made(across, up, (k, i) =>
    stands[i * across + k] === 1 ? values[i * across + k]! : between(coarse, k / step, i / step),
  );
}
