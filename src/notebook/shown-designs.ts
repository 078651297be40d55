import { distinct, frontOf, thinned } from '../graph/front.ts';
import { type Design, type Found, isGood } from '../graph/problem.ts';
import { type BestQuestion, placeOf } from './bests.ts';

/** For one aim so many of the best, this far apart in one of the ranges; for two so many of the front. */
const most = { best: 10, front: 24 };
const apart = 0.05;

/** The designs worth showing, the best first: of one aim the best that differ, of two those that none beats in both. */
export function shownDesigns(question: BestQuestion, { tried }: Found): readonly Design[] {
  const senses = question.aims.map((aim) => aim.sense);
  const good = tried.filter(isGood);
  const [sense] = senses;
  if (senses.length === 1) {
    const ranked = good.toSorted((a, b) => sense! * (b.aims[0]! - a.aims[0]!));
    return distinct(ranked, (design) => placeOf(question, design), apart, most.best);
  }
  const front = frontOf(good, senses);
  const widths = senses.map((_, k) => {
    const values = front.map((design) => design.aims[k]!);
    return Math.max(...values) - Math.min(...values);
  });
  return thinned(front, most.front, widths);
}

/** How many designs each limit left out before any work, in the order of the limits; the first that it broke counts. */
export function leftOutBy({ limits }: BestQuestion, { leftOut }: Found): readonly number[] {
  return limits.map((_, k) => leftOut.filter(({ excess }) => excess.findIndex((e) => e > 0) === k).length);
}
/** How many that were worked out broke each limit, likewise; and how many came to no answer. */
export function brokenBy(
  { limits }: BestQuestion,
  { tried }: Found,
): { readonly by: readonly number[]; readonly none: number } {
  const answered = tried.filter(({ aims }) => aims.every(Number.isFinite));
  return {
    by: limits.map((_, k) => answered.filter(({ excess }) => excess.findIndex((e) => e > 0) === k).length),
    none: tried.length - answered.length,
  };
}

/** How many of the best of one aim lie as near to the first as `share` of it: nearer than a model can tell builds apart. */
export function alike(shown: readonly Design[], share: number): number {
  const [first] = shown;
  if (!first) return 0;
  const far = shown.findIndex(({ aims }) => Math.abs(aims[0]! - first.aims[0]!) > share * Math.abs(first.aims[0]!));
  return far < 0 ? shown.length : far;
}
