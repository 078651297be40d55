/**
 * The highest point of a curve given by samples: the top of a parabola through the largest sample and its neighbors, or
 * the sample itself at an end.
 *
 * @param xs where the samples stand, increasing
 * @param ys the samples
 * @returns null where there is none
 */
export function peakOf(
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
): { readonly x: number; readonly y: number } | null {
  let best = -1;
  for (let i = 0; i < ys.length; i++) if (best < 0 || ys[i]! > ys[best]!) best = i;
  if (best < 0) return null;
  const [x, y] = [xs[best]!, ys[best]!];
  if (best === 0 || best === ys.length - 1) return { x, y };
  const [left, right] = [xs[best - 1]! - x, xs[best + 1]! - x];
  const [down, up] = [ys[best - 1]! - y, ys[best + 1]! - y];
  // y + b t + c t², through both neighbors
  const c = (up / right - down / left) / (right - left);
  const b = down / left - c * left;
  if (!(c < 0)) return { x, y };
  const t = -b / (2 * c);
  return { x: x + t, y: y + (b * t) / 2 };
}
