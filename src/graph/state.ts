import type { Phrase } from '../units/phrase.ts';

/** What went wrong, and where: `at` is the cell where it began, `about` the cell whose value is to blame. */
export interface Fault {
  readonly at: string;
  readonly about: string;
  readonly message: Phrase;
}

/**
 * Where a cell stands.
 * ready: the value of the present inputs. coming: a provisional value of the present inputs, readers use it and are
 * coming too. waiting: no value of the present inputs yet. fault: there is none to be had. `last` is the last good
 * value: shown dimmed, read by nobody.
 */
export type State<T = unknown> =
  | { readonly is: 'ready'; readonly value: T }
  | { readonly is: 'coming'; readonly value: T; readonly done: number }
  | { readonly is: 'waiting'; readonly last: T | undefined; readonly done: number; readonly stopped?: boolean }
  | { readonly is: 'fault'; readonly last: T | undefined; readonly fault: Fault };

/** The value of the present inputs, if there is one. */
export const present = <T>(state: State<T>): T | undefined =>
  state.is === 'ready' || state.is === 'coming' ? state.value : undefined;

/** The present value or the last good one. */
export const lastGood = <T>(state: State<T>): T | undefined =>
  state.is === 'ready' || state.is === 'coming' ? state.value : state.last;

/** A value that a cell may do without, where it cannot. */
export function needed<T>(value: T | undefined): T {
  if (value === undefined) throw new Impossible(['Something it needs has no value.']);
  return value;
}

/** Thrown by a cell that has no answer: the sentence, and the name in `from` (or the id) of the cell whose value it is about. */
export class Impossible extends Error {
  readonly phrase: Phrase;
  readonly about: string | undefined;
  constructor(phrase: Phrase, about?: string) {
    super(phrase.map((part) => (typeof part === 'string' ? part : part.si)).join(''));
    this.phrase = phrase;
    this.about = about;
  }
}
