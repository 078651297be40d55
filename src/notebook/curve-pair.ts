import type { Curve } from '../graph/kind.ts';

/** A curve's value at a place, straight between its points; null beyond its ends. */
export function valueOn({ x, y }: Curve, at: number): number | null {
  const hair = 1e-9 * Math.abs(at);
  const above = x.findIndex((each) => each >= at - hair);
  if (above < 0 || (above === 0 && x[0]! > at + hair)) return null;
  if (x[above]! <= at + hair) return y[above]!;
  const share = (at - x[above - 1]!) / (x[above]! - x[above - 1]!);
  return y[above - 1]! + share * (y[above]! - y[above - 1]!);
}

/** What one curve has over another, wherever both reach, and where that changes sides. */
export interface CurvePair {
  readonly xs: readonly number[];
  readonly leads: readonly number[];
  readonly crossings: readonly number[];
}
/** Compares two curves at the points of both, with straight lines between them. */
export function curvePair(one: Curve, other: Curve): CurvePair {
  const points = [...new Set([...one.x, ...other.x])]
    .toSorted((a, b) => a - b)
    .flatMap((x) => {
      const [mine, theirs] = [valueOn(one, x), valueOn(other, x)];
      return mine === null || theirs === null ? [] : [{ x, lead: mine - theirs }];
    });
  // Where both are even nobody is ahead: the sides change between the points that have a side.
  const sided = points.flatMap(({ lead }, i) => (lead === 0 ? [] : [i]));
  const crossings = sided.flatMap((i, k) => {
    const before = sided[k - 1];
    if (before === undefined || points[before]!.lead * points[i]!.lead > 0) return [];
    const [a, b] = before < i - 1 ? [points[before + 1]!, points[i - 1]!] : [points[before]!, points[i]!];
    return [before < i - 1 ? (a.x + b.x) / 2 : a.x + ((b.x - a.x) * a.lead) / (a.lead - b.lead)];
  });
  return { xs: points.map((p) => p.x), leads: points.map((p) => p.lead), crossings };
}

/** The largest lead between two places, with its sign; 0 where there is none. */
export const largestLead = ({ xs, leads }: CurvePair, from: number, to: number): number =>
  leads.reduce((most, lead, i) => (xs[i]! >= from && xs[i]! <= to && Math.abs(lead) > Math.abs(most) ? lead : most), 0);
