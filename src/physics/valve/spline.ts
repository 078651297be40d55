/** A smooth curve through the rows of a table; between two rows a cubic. Plain arrays, fit to be posted to a worker. */
export interface Spline {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Second derivative of the curve at each row. */
  readonly bend: Float64Array;
}

/**
 * The cubic spline that is level at both ends, with first and second derivative continuous throughout.
 *
 * @param x at least two places, growing
 * @param y height at each
 * Source: the tridiagonal system of C. de Boor, A Practical Guide to Splines, 1978, ch. IV (from memory).
 */
export function levelSpline(x: Float64Array, y: Float64Array): Spline {
  const last = x.length - 1;
  const bend = new Float64Array(last + 1);
  const carry = new Float64Array(last + 1);
  for (let i = 0; i <= last; i++) {
    const before = i > 0 ? x[i]! - x[i - 1]! : 0;
    const after = i < last ? x[i + 1]! - x[i]! : 0;
    const rise = (i < last ? (y[i + 1]! - y[i]!) / after : 0) - (i > 0 ? (y[i]! - y[i - 1]!) / before : 0);
    const pivot = 2 * (before + after) - before * (i > 0 ? carry[i - 1]! : 0);
    carry[i] = after / pivot;
    bend[i] = (6 * rise - before * (i > 0 ? bend[i - 1]! : 0)) / pivot;
  }
  for (let i = last - 1; i >= 0; i--) bend[i]! -= carry[i]! * bend[i + 1]!;
  return { x, y, bend };
}

/** The number of the row at or before a place inside the table; the last but one at its end. */
export function rowBefore(x: Float64Array, at: number): number {
  let below = 0;
  let above = x.length - 1;
  while (above - below > 1) {
    const middle = (below + above) >> 1;
    if (x[middle]! > at) above = middle;
    else below = middle;
  }
  return below;
}

/** Height of the curve; outside the table the cubic at its end goes on. */
export function splineHeight({ x, y, bend }: Spline, at: number): number {
  const i = rowBefore(x, at);
  const h = x[i + 1]! - x[i]!;
  const t = (at - x[i]!) / h;
  const s = 1 - t;
  return s * y[i]! + t * y[i + 1]! + ((s ** 3 - s) * bend[i]! + (t ** 3 - t) * bend[i + 1]!) * ((h * h) / 6);
}

/** First derivative of the curve. */
export function splineSlope({ x, y, bend }: Spline, at: number): number {
  const i = rowBefore(x, at);
  const h = x[i + 1]! - x[i]!;
  const t = (at - x[i]!) / h;
  const s = 1 - t;
  return (y[i + 1]! - y[i]!) / h + ((3 * t * t - 1) * bend[i + 1]! - (3 * s * s - 1) * bend[i]!) * (h / 6);
}

/** Second derivative of the curve: straight lines between the rows. */
export function splineBend({ x, bend }: Spline, at: number): number {
  const i = rowBefore(x, at);
  const t = (at - x[i]!) / (x[i + 1]! - x[i]!);
  return (1 - t) * bend[i]! + t * bend[i + 1]!;
}
