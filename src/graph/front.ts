/** What is told apart by its aims: figures that are to be large (sense 1) or small (sense -1). */
export interface Aimed {
  readonly aims: readonly number[];
}
export type Sense = 1 | -1;

/** How far a is ahead of b in the aim in which it is ahead most; none where it is behind or level in all. */
export const ahead = (a: readonly number[], b: readonly number[], senses: readonly Sense[]): number =>
  senses.reduce<number>((most, sense, k) => Math.max(most, sense * (a[k]! - b[k]!)), -Infinity);

/**
 * Those that none of the others beats in one aim without falling behind in another, ordered by the first aim from its
 * best. Of those that are level in all aims the first is kept.
 */
export function frontOf<T extends Aimed>(all: readonly T[], senses: readonly Sense[]): readonly T[] {
  const ordered = all.toSorted((a, b) => {
    const k = senses.findIndex((_, k) => a.aims[k] !== b.aims[k]);
    return k < 0 ? 0 : senses[k]! * (b.aims[k]! - a.aims[k]!);
  });
  const front: T[] = [];
  for (const each of ordered) if (front.every((other) => ahead(each.aims, other.aims, senses) > 0)) front.push(each);
  return front;
}

/**
 * At most so many of a front, its two ends among them: where they stand closest, those between go first. `widths` are
 * what one aim's figures are compared by.
 */
export function thinned<T extends Aimed>(front: readonly T[], most: number, widths: readonly number[]): readonly T[] {
  const kept = [...front];
  const gap = (a: T, b: T): number => Math.hypot(...a.aims.map((v, k) => (v - b.aims[k]!) / (widths[k]! || 1)));
  while (kept.length > Math.max(2, most)) {
    let least = 1;
    let room = Infinity;
    for (let i = 1; i < kept.length - 1; i++) {
      const here = gap(kept[i - 1]!, kept[i]!) + gap(kept[i]!, kept[i + 1]!);
      if (here < room) [least, room] = [i, here];
    }
    kept.splice(least, 1);
  }
  return kept;
}

/** The first of a list that differ: each is at least `apart` from those before it in one coordinate of its place. */
export function distinct<T>(
  ordered: readonly T[],
  placeOf: (each: T) => readonly number[],
  apart: number,
  most: number,
): readonly T[] {
  const kept: T[] = [];
  for (const each of ordered) {
    if (kept.length === most) break;
    const place = placeOf(each);
    const isNear = (other: T): boolean => placeOf(other).every((v, k) => Math.abs(v - place[k]!) < apart - 1e-12);
    if (!kept.some(isNear)) kept.push(each);
  }
  return kept;
}
