import { verdict, type Verdict, wordAt } from '../../src/graph/kind.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import { gap } from '../../src/units/quantity.ts';

export const clearanceKind = verdict(gap, [
  { id: 'under', label: 'under the minimum', tone: 'beyond' },
  { id: 'clear', label: 'clear', tone: 'comfortable' },
]);

/** The least gap wanted, m: more of it with aluminum rods, which grow and stretch more. */
export const leastWanted = (minimum: number, aluminum: number, rodMaterial: string): number =>
  minimum + (rodMaterial === 'aluminum' ? aluminum : 0);

/** A gap against its minimum, both m. */
export function judged(clearance: number, minimum: number, what: string): Verdict {
  const word = clearance < minimum ? 'under' : wordAt(clearanceKind, Infinity, [minimum]);
  return {
    word,
    value: clearance,
    edges: [minimum],
    lead: [`. ${what}`],
    place: phrase`${word === 'under' ? 'is less than' : 'is at least'} ${value(minimum, gap)}`,
    advice: word === 'under' ? ['Clay or light checking springs on the real engine decide.'] : [],
  };
}
