import { Impossible } from '../../src/graph/state.ts';

/** Where the caution band begins and ends for one fuel, as a dynamic ratio from the seat closing, at sea level. */
export interface Band {
  readonly start: number;
  readonly end: number;
}

export const postedGrades = ['85', '87', '89', '91', '93'] as const;

// All of this is common practice, no source: bands for iron heads, and how much more aluminum bears.
const ironAt85 = 6.75;
/** Ratio for each octane number. */
export const perOctane = 0.125;
const ironWidth = 0.5;
const flexStart = 9.25;
const aluminum = { start: 0.25, end: 0.5 };
/** What aluminum heads are credited with, in the middle of the band. */
export const aluminumCredit = (aluminum.start + aluminum.end) / 2;

/**
 * The band of a fuel by its grade, with the given heads. Posted grades and mixes lie on one straight line from 85 to
 * 100 AKI; flex fuel is read at its leanest.
 */
export function practiceBand(grade: string, octane: number, head: 'iron' | 'aluminum'): Band {
  const iron = grade === 'flex' ? flexStart : ironAt85 + perOctane * (octane - 85);
  const more = head === 'aluminum' ? aluminum : { start: 0, end: 0 };
  return { start: iron + more.start, end: iron + ironWidth + more.end };
}

/** The band, or a refusal where practice knows none. */
export function knownBand(grade: string, octane: number, head: 'iron' | 'aluminum'): Band {
  if (grade === 'mixed' && (octane < 85 || octane > 100))
    throw new Impossible(
      ['Practice knows bands only for 85 to 100 AKI; this mix lies outside. Hold an edge of your own.'],
      'ethanolAdded',
    );
  return practiceBand(grade, octane, head);
}
