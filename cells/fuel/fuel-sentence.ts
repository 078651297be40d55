import { verdict, type Verdict, wordAt } from '../../src/graph/kind.ts';
import { phrase, type Phrase, value } from '../../src/units/phrase.ts';
import { octane, ratio } from '../../src/units/quantity.ts';
import { postedGrades, practiceBand } from './practice.ts';

export const fuelVerdictKind = verdict(ratio, [
  { id: 'comfortable', label: 'comfortable', tone: 'comfortable' },
  { id: 'borderline', label: 'borderline', tone: 'borderline' },
  { id: 'beyond', label: 'beyond this fuel', tone: 'beyond' },
]);

interface Case {
  readonly ratio: number;
  readonly start: number;
  readonly end: number;
  readonly grade: string;
  readonly octane: number;
  readonly head: 'iron' | 'aluminum';
  /** Where: ", here, on …" and so on. */
  readonly where: (fuel: Phrase) => Phrase;
}

/** The fuel's verdict on a dynamic ratio: the word, the edges, and the lowest grade that would be comfortable. */
export function fuelVerdictOf(c: Case): Verdict {
  const edges = [c.start, c.end];
  const word = wordAt(fuelVerdictKind, c.ratio, edges);
  const side = { comfortable: 'under', borderline: 'inside', beyond: 'over' }[word]!;
  return {
    word,
    value: c.ratio,
    edges,
    lead: phrase`${c.where(fuelName(c))}. A dynamic ratio of`,
    place: phrase`stands ${side} the band from ${value(c.start, ratio)} to ${value(c.end, ratio)}`,
    advice: lowestGrade(c),
  };
}

const fuelName = ({ grade, octane: aki }: Case): Phrase =>
  grade === 'flex'
    ? ['flex fuel at its leanest']
    : grade === 'mixed'
      ? phrase`a mix of ${value(aki, octane)} AKI`
      : [`${grade} AKI`];

/** An edge that the reader has moved moves with every grade. */
function lowestGrade(c: Case): Phrase {
  const moved = c.start - practiceBand(c.grade, c.octane, c.head).start;
  const lowest = postedGrades.find((grade) => c.ratio < practiceBand(grade, Number(grade), c.head).start + moved);
  return lowest === undefined
    ? ['No posted grade makes it comfortable.']
    : [`The lowest grade on which it would be comfortable is ${lowest}.`];
}
