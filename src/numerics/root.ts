/**
 * Where a continuous function crosses zero, by Brent's method.
 *
 * @param f the function
 * @param lo one end of the bracket
 * @param hi the other end
 * @param tolerance how closely the crossing is pinned down, as a share of the bracket's larger end
 * @returns the crossing, or null when f has one sign at both ends or is not a number anywhere it was asked
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives, Prentice-Hall, 1973, ch. 4 (from memory).
 */
export function root(f: (x: number) => number, lo: number, hi: number, tolerance = 1e-12): number | null {
  let [a, b] = [lo, hi];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(Math.sign(fa) * Math.sign(fb) < 0)) return null; // also where an end is not a number
  const within = tolerance * Math.max(Math.abs(lo), Math.abs(hi));

  let [c, fc] = [a, fa]; // the end opposite b
  let step = b - a;
  let before = step;
  for (let turn = 0; turn < 200; turn++) {
    if (Math.abs(fc) < Math.abs(fb)) [a, b, c, fa, fb, fc] = [b, c, b, fb, fc, fb]; // b is always the best so far
    const reach = 2 * Number.EPSILON * Math.abs(b) + within / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= reach || fb === 0) return b;

    let [bold, by] = [false, half];
    if (Math.abs(before) >= reach && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa;
      let [p, q] = [2 * half * s, 1 - s]; // secant
      if (a !== c) {
        const [r, t] = [fb / fc, fa / fc]; // inverse quadratic through three points
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      p = Math.abs(p);
      bold = 2 * p < Math.min(3 * half * q - Math.abs(reach * q), Math.abs(before * q));
      if (bold) by = p / q;
    }
    before = bold ? step : half;
    step = by;

    [a, fa] = [b, fb];
    b += Math.abs(step) > reach ? step : Math.sign(half) * reach;
    fb = f(b);
    if (Number.isNaN(fb)) return null;
    if (fb * Math.sign(fc) > 0) {
      [c, fc] = [a, fa];
      step = before = b - a;
    }
  }
  return b;
}
