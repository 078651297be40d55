import { halton } from '../numerics/halton.ts';
import type { Ask, Figures, Found, Problem } from './problem.ts';
import { Field, type Place } from './field.ts';
import { Scout } from './scout.ts';

/** After so many designs in a row that quick limits left out there is no use in more. */
const hopeless = 600;
/** How often a batch is filled up after quick limits left some of it out. */
const rounds = 6;

/**
 * Looks for the designs that come nearest to one aim, or to two that are traded against each other, within limits: first
 * evenly all over, then round the best found so far, where a smooth model of what is known expects better ones. It ends
 * when its budget is spent, when nothing new is left to try, or when quick limits leave everything out.
 * Source of the scheme: R. G. Regis and C. A. Shoemaker, INFORMS Journal on Computing 19 (2007) 497-509 (from memory);
 * the order by broken limits first is K. Deb's, Computer Methods in Applied Mechanics and Engineering 186 (2000) 311-338.
 */
export function* best(problem: Problem): Generator<Ask, Found, readonly Figures[]> {
  const { spans, budget, width, quick } = problem;
  const field = new Field(problem);
  const scout = new Scout(problem, field);
  const even = evenly(problem, field);
  const first = Math.min(budget, Math.max(2 * spans.length + 2, Math.min(40, Math.ceil(budget / 4))));
  const screens = quick.includes(true);
  let inVain = 0;
  let { start } = problem;

  while (field.tried.length < budget) {
    const wanted = Math.min(width, budget - field.tried.length);
    const batch: Place[] = [];
    for (let round = 0; round < rounds && batch.length < wanted; round++) {
      const asked: Place[] = start ? [field.exactly(start)] : [];
      start = undefined;
      scout.begin();
      for (let i = asked.length; i < wanted - batch.length; i++) {
        // Where limits leave little room, an even spread rarely falls into it.
        const isTight = field.leftOut.length > 4 * (field.tried.length + batch.length + 2);
        const isEven = field.tried.length < first ? !isTight || i % 3 === 0 : i % 6 === 5;
        yield { of: 'limits', designs: [], found: field }; // a breath: each pick takes some milliseconds
        const besides = [...batch, ...asked];
        const next = (isEven ? null : scout.next(i, besides)) ?? even(besides);
        if (next) asked.push(next);
      }
      if (asked.length === 0) break;
      if (!screens) {
        batch.push(...asked);
        break;
      }
      const known = yield { of: 'limits', designs: asked.map((place) => place.at), found: field };
      for (const [i, place] of asked.entries()) {
        const isOut = known[i]!.excess.some((e) => e > 0);
        inVain = isOut ? inVain + 1 : 0;
        if (isOut) field.leaveOut(place, known[i]!);
        else batch.push(place);
      }
    }
    if (batch.length > 0) {
      const figures = yield { of: 'all', designs: batch.map((place) => place.at), found: field };
      batch.forEach((place, i) => field.add(place, figures[i]!));
    } else if (inVain >= hopeless || even([]) === null) break;
  }
  return field;
}

/** Places of an even sequence, shifted by chance, that are not known yet; null where there are no more. */
function evenly({ spans, random }: Problem, field: Field): (besides: readonly Place[]) => Place | null {
  const shift = spans.map(() => random());
  let i = 0;
  return (besides) => {
    for (let turn = 0; turn < 400; turn++) {
      const place = field.nearest(halton(++i, spans.length).map((v, k) => (v + shift[k]!) % 1));
      if (!field.isKnown(place) && besides.every((other) => other.key !== place.key)) return place;
    }
    return null;
  };
}
