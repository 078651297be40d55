import type { Cell } from '../graph/cell.ts';
import type { Question, Trial, Way } from './guide.ts';
import { labelOf, nameOf, pairAt, placeFor, type Standing, textAt, valueAt, valueIn } from './guide-values.ts';
import type { GuideWords, Place, Sentence, ValuePlace } from './guide-words.ts';
import type { Store } from './store.ts';

/** A piece of a sentence; `live` is a value of the page. */
export interface Part {
  readonly text: string;
  readonly live: boolean;
}
/** What was read when a step was begun, by `keyOf`. */
export type Before = ReadonlyMap<string, unknown>;
export const keyOf = ({ cell, at }: Pick<ValuePlace, 'cell' | 'at'>): string =>
  at === undefined ? cell.id : `${cell.id}@${at}`;

/** Where a step asks a cell to go. */
interface Aim {
  readonly cell: Cell;
  readonly value: unknown;
}
const missing = '…';

/** Words with their values filled in as they stand; "…" for a value that is not there, or not yet. */
export function filled(store: Store, words: GuideWords, aim?: Aim): readonly Part[] {
  let parts: readonly Filled[] = [];
  for (const sentence of words) {
    parts = sentence.map((word) => partOf(store, word, aim));
    // Which of several wordings is true of two curves is not known before they are.
    if (words.length > 1 && parts.some((part) => part.decides)) return [{ text: missing, live: false }];
    if (parts.every((part) => part.is !== 'none')) break;
  }
  return parts.map(({ text, live }) => ({ text, live }));
}
export const joined = (parts: readonly Part[]): string => parts.map((p) => p.text).join('');

interface Filled extends Part {
  readonly is: 'there' | 'coming' | 'none';
  readonly decides: boolean;
}
function partOf(store: Store, word: Sentence[number], aim: Aim | undefined): Filled {
  if (typeof word === 'string') return { text: word, live: false, is: 'there', decides: false };
  const found = textOf(store, word, aim);
  const decides = word.is === 'pair' && found.is === 'coming';
  return { text: found.is === 'there' ? found.value : missing, live: true, is: found.is, decides };
}
function textOf(store: Store, word: Place, aim: Aim | undefined): Standing<string> {
  if (word.is === 'pair') return pairAt(store, word);
  if (word.is === 'chosen') {
    const { chosen } = store.document;
    return chosen === null ? { is: 'none' } : { is: 'there', value: nameOf(store, chosen) };
  }
  if (word.is === 'goal')
    return aim?.value === undefined
      ? { is: 'coming' }
      : { is: 'there', value: textAt(store, placeFor(aim.cell), aim.value) };
  const found = valueAt(store, word);
  return found.is === 'there' ? { is: 'there', value: textAt(store, word, found.value) } : found;
}

/** What is read in a variant, or in the one that is looked at. */
export type Read = Pick<ValuePlace, 'cell' | 'of'>;
/** All that words read. */
export const readsOf = (words: GuideWords): readonly Read[] =>
  words.flat().flatMap((word): readonly Read[] => {
    if (typeof word === 'string') return [];
    if (word.is === 'pair') return word.of.map((of) => ({ cell: word.curve, of }));
    return word.is === 'value' ? [word] : [];
  });
/** What is to be remembered as a trial begins: the field it asks for, and what it watches. */
export const startsOf = (trial: Trial): readonly ValuePlace[] =>
  trial.is === 'field' ? [placeFor(trial.move), ...trial.watch] : [];
export const readsOfTrial = (trial: Trial): readonly Read[] => [
  ...startsOf(trial),
  ...readsOf(trial.say),
  ...(trial.is === 'open' ? [] : readsOf(trial.done)),
];
export const readsOfQuestion = ({ ask, of, vary, read, beside }: Question): readonly Read[] => [
  ...readsOf(ask),
  ...[vary, read, ...(beside ? [beside] : [])].map((cell) => ({ cell, of })),
];

/** Where a change leads from a value; undefined where there is none. */
export const aimOf = (cell: Cell, from: unknown, to: number | string): Aim => ({
  cell,
  value: typeof to === 'string' ? to : typeof from === 'number' ? from + to : undefined,
});

type Verbs = Readonly<Record<Way | 'go', string>>;
const past: Verbs = { rise: 'rose', fall: 'fell', stay: 'stays at', go: 'went' };
const coming: Verbs = { rise: 'rises', fall: 'falls', stay: 'stays at', go: 'goes' };

/** "Dynamic compression ratio fell from 7.69 to 7.11", or that it stays; `about` is said before what it comes to. */
export function went(
  store: Store,
  at: ValuePlace,
  [from, to]: readonly [unknown, unknown],
  verbs: Verbs = coming,
  about = '',
): string {
  const shown = (value: unknown): string => (value === undefined ? missing : textAt(store, at, value));
  const [before, after] = [shown(from), shown(to)];
  if (before === after) return `${labelOf(store, at)} ${verbs.stay} ${before}`;
  const verb = typeof from !== 'number' || typeof to !== 'number' ? verbs.go : to > from ? verbs.rise : verbs.fall;
  return `${labelOf(store, at)} ${verb} from ${before} to ${about}${after}`;
}

/** The share of what was asked for that counts as done: the last grid mark of a slider need not be met. */
const enough = 0.95;

/** What came of a trial: what the reader moved, from where to where; null while nothing has. */
export function outcome(store: Store, trial: Trial, before: Before): string | null {
  if (trial.is === 'open') return null;
  if (trial.is === 'choose') return store.document.chosen === trial.variant ? joined(filled(store, trial.done)) : null;
  const { move, to, watch, done } = trial;
  if (!isMoved(store, trial, before)) return null;
  const [from, now] = [before.get(move.id), present(store, placeFor(move))];
  const isDone =
    typeof to === 'string' ? now === to : typeof from === 'number' && ((now as number) - from) / to >= enough;
  const end = isDone
    ? joined(filled(store, done))
    : `This step asks for ${textAt(store, placeFor(move), aimOf(move, from, to).value)}.`;
  const moved =
    typeof to === 'string'
      ? `${move.label}: ${textAt(store, placeFor(move), now)}`
      : went(store, placeFor(move), [from, now], { ...past, rise: past.go, fall: past.go });
  return [moved, ...watch.map((at) => followed(store, at, before))].map((s) => `${s}.`).join(' ') + ` ${end}`;
}
/** True once the field a trial asks for stands elsewhere than when the step was begun. */
export function isMoved(store: Store, trial: Trial, before: Before): boolean {
  if (trial.is !== 'field') return false;
  const { move } = trial;
  const [from, now] = [before.get(move.id), present(store, placeFor(move))];
  if (from === undefined || now === undefined) return false;
  return textAt(store, placeFor(move), from) !== textAt(store, placeFor(move), now);
}
function followed(store: Store, at: ValuePlace, before: Before): string {
  const found = valueAt(store, at);
  if (found.is === 'coming') return `${labelOf(store, at)} is being worked out`;
  const now = found.is === 'there' ? found.value : undefined;
  const from = before.get(keyOf(at));
  if (from === undefined && now !== undefined) return `${labelOf(store, at)} is ${textAt(store, at, now)} now`;
  return went(store, at, [from, now], past);
}
function present(store: Store, at: ValuePlace): unknown {
  const found = valueAt(store, at);
  return found.is === 'there' ? found.value : undefined;
}

/** Where the question's change leads. */
export function aimOfQuestion(store: Store, { vary, of, by }: Question): Aim {
  const now = valueIn(store, vary, of);
  return aimOf(vary, now.is === 'there' ? now.value : undefined, by);
}
