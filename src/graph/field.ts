import type { Design, Figures, Found, Problem, Span } from './problem.ts';

/** A place in the field: its coordinates from 0 to 1, and the values of the inputs there. */
export interface Place {
  readonly unit: readonly number[];
  readonly at: readonly number[];
  readonly key: string;
}
export type Known = Place & Design;

/** All that is known of the designs so far, as a cube with sides of 1. */
export class Field implements Found {
  readonly tried: Known[] = [];
  readonly leftOut: Known[] = [];
  private readonly spans: readonly Span[];
  private readonly keys = new Set<string>();

  constructor({ spans }: Pick<Problem, 'spans'>) {
    this.spans = spans;
  }
  /** The place worth trying that is nearest to coordinates; those outside are taken to the edge. */
  nearest(unit: readonly number[]): Place {
    return this.exactly(
      unit.map((u, k) => {
        const { from, to, snap } = this.spans[k]!;
        const [low, high] = [Math.min(from, to), Math.max(from, to)];
        const value = Math.min(high, Math.max(low, from + u * (to - from)));
        const even = snap ? snap(value) : value;
        return even >= low && even <= high ? even : value;
      }),
    );
  }
  /** The place of these values. */
  exactly(at: readonly number[]): Place {
    const unit = at.map((v, k) => (v - this.spans[k]!.from) / (this.spans[k]!.to - this.spans[k]!.from));
    return { unit, at, key: at.join() };
  }
  isKnown({ key }: Place): boolean {
    return this.keys.has(key);
  }
  add(place: Place, figures: Figures): void {
    this.keys.add(place.key);
    this.tried.push({ ...place, ...figures });
  }
  leaveOut(place: Place, figures: Figures): void {
    this.keys.add(place.key);
    this.leftOut.push({ ...place, ...figures });
  }
}

export function distance(a: readonly number[], b: readonly number[]): number {
  let square = 0;
  for (let k = 0; k < a.length; k++) square += (a[k]! - b[k]!) ** 2;
  return Math.sqrt(square);
}
