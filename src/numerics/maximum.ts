const golden = (Math.sqrt(5) - 1) / 2;

/**
 * Where a function is largest on an interval: the best of evenly spaced samples, then golden-section search beside it.
 *
 * @param f the function; peaks narrower than the spacing of the samples may be missed
 * @param lo lower end
 * @param hi upper end
 * @param samples how many spaces the interval is cut into before the search
 * @returns the place; a flat top is found to about the square root of the machine's precision, the height far better
 * Source: J. Kiefer, Proceedings of the American Mathematical Society 4 (1953) 502-506 (from memory).
 */
export function maximumAt(f: (x: number) => number, lo: number, hi: number, samples = 360): number {
  const space = (hi - lo) / samples;
  let best = lo;
  let height = f(lo);
  for (let i = 1; i <= samples; i++) {
    const x = lo + i * space;
    const y = f(x);
    if (y > height) [best, height] = [x, y];
  }

  let [a, b] = [Math.max(lo, best - space), Math.min(hi, best + space)];
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
  let [fc, fd] = [f(c), f(d)];
  while (b - a > 1e-9 * (hi - lo)) {
    if (fc > fd) {
      [b, d, fd] = [d, c, fc];
      c = b - golden * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + golden * (b - a);
      fd = f(d);
    }
  }
  const inside = (a + b) / 2;
  return f(inside) > height ? inside : best; // the peak may sit exactly on a sample or on an end
}
