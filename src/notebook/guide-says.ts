import type { Cell } from '../graph/cell.ts';
import { Probe } from '../graph/probe.ts';
import { NotSettled } from '../graph/snapshot.ts';
import { Impossible, present } from '../graph/state.ts';
import { say } from '../units/phrase.ts';
import { goal, type GuideWords, type Question, type Trial, type Way } from './guide.ts';
import type { Store } from './store.ts';

/** A piece of a sentence; `live` is a value of the page. */
export interface Part {
  readonly text: string;
  readonly live: boolean;
}
/** What cells were worth when a step was begun. */
export type Before = ReadonlyMap<Cell, unknown>;

/** A value as the page shows it, with its unit; "…" where there is none. */
const textOf = (store: Store, cell: Cell, value: unknown): string =>
  value === undefined ? '…' : cell.kind.text(value, store.systemOf(cell));
const valueNow = (store: Store, cell: Cell): unknown => present(store.state(cell));

/** Words with their values filled in as they stand; `aim` is where the step asks a cell to go. */
export function filled(
  store: Store,
  words: GuideWords,
  aim?: { readonly cell: Cell; readonly value: unknown },
): readonly Part[] {
  return words.map((word) => {
    if (typeof word === 'string') return { text: word, live: false };
    if (word !== goal) return { text: textOf(store, word, valueNow(store, word)), live: true };
    return { text: aim ? textOf(store, aim.cell, aim.value) : '…', live: true };
  });
}
export const joined = (parts: readonly Part[]): string => parts.map((p) => p.text).join('');

/** The cells that words read. */
export const cellsOf = (words: GuideWords): readonly Cell[] =>
  words.filter((word): word is Cell => typeof word !== 'string' && word !== goal);

/** Where a change leads from a value; undefined where there is none. */
export const aimOf = (cell: Cell, from: unknown, by: number): { readonly cell: Cell; readonly value: unknown } => ({
  cell,
  value: typeof from === 'number' ? from + by : undefined,
});

/** "Dynamic compression ratio fell from 7.69 to 7.11", or that it stays. */
function went(store: Store, cell: Cell, from: unknown, to: unknown, verbs: Verbs): string {
  const [before, after] = [textOf(store, cell, from), textOf(store, cell, to)];
  if (before === after) return `${cell.label} ${verbs.stay} ${before}`;
  const verb = typeof from !== 'number' || typeof to !== 'number' ? verbs.go : to > from ? verbs.rise : verbs.fall;
  return `${cell.label} ${verb} from ${before} to ${after}`;
}
type Verbs = Readonly<Record<Way | 'go', string>>;
const past: Verbs = { rise: 'rose', fall: 'fell', stay: 'stays at', go: 'went' };
const coming: Verbs = { rise: 'rises', fall: 'falls', stay: 'stays at', go: 'goes' };

/** The share of what was asked for that counts as done: the last grid mark of a slider need not be met. */
const enough = 0.95;

/** What the reader's trial moved, from where to where; null while the cell stands where it stood. */
export function outcome(store: Store, trial: Trial, before: Before): string | null {
  const { move, by, watch, done } = trial;
  const [from, to] = [before.get(move), valueNow(store, move)];
  if (typeof from !== 'number' || typeof to !== 'number') return null;
  if (textOf(store, move, from) === textOf(store, move, to)) return null;
  const moved = went(store, move, from, to, { ...past, rise: past.go, fall: past.go });
  const followed = watch.map((cell) => went(store, cell, before.get(cell), valueNow(store, cell), past));
  const end =
    (to - from) / by >= enough
      ? joined(filled(store, done))
      : `This step asks for ${textOf(store, move, aimOf(move, from, by).value)}.`;
  return [moved, ...followed].map((s) => `${s}.`).join(' ') + ` ${end}`;
}

/** The answer to a question, worked out from the notebook as it stands. */
export interface Answer {
  readonly way: Way;
  readonly from: number;
  readonly to: number;
  /** The figures, in a sentence or two. */
  readonly figures: string;
}

/** Asks the graph what would follow; the notebook is not changed. A string says why there is no answer now. */
export function answerOf(store: Store, { vary, by, read, beside }: Question): Answer | string {
  try {
    const reads = beside ? [read, beside] : [read];
    const now = valueNow(store, vary);
    const from = valueNow(store, read);
    if (typeof now !== 'number' || typeof from !== 'number')
      return 'The engine as it stands has no answer. Undo, or reset, and ask again.';
    const probe = new Probe(store.snapshot(), [vary], reads);
    probe.put(0, now + by);
    probe.run();
    const to = probe.get(0) as number;
    const way = textOf(store, read, from) === textOf(store, read, to) ? 'stay' : to > from ? 'rise' : 'fall';
    const others = beside ? [went(store, beside, valueNow(store, beside), probe.get(1), coming)] : [];
    const figures = [went(store, read, from, to, coming), ...others].map((s) => `${s}.`).join(' ');
    return { way, from, to, figures };
  } catch (error) {
    if (error instanceof NotSettled) return `${error.cell.label} has no value yet. Ask again in a moment.`;
    if (error instanceof Impossible) return `${say(error.phrase, store.system)} Undo, or reset, and ask again.`;
    throw error;
  }
}
