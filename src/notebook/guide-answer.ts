import type { Cell } from '../graph/cell.ts';
import { numeric } from '../graph/numeric.ts';
import { Probe } from '../graph/probe.ts';
import { NotSettled } from '../graph/snapshot.ts';
import { Impossible } from '../graph/state.ts';
import type { SweepResult } from '../graph/sweep.ts';
import { say } from '../units/phrase.ts';
import type { Question, Way } from './guide.ts';
import { went } from './guide-says.ts';
import { placeFor, stateIn, textAt, valueIn } from './guide-values.ts';
import type { Store } from './store.ts';
import { groundOf } from './sweeps.ts';

/** The answer to a question, worked out from the notebook as it stands. */
export interface Answer {
  readonly way: Way;
  readonly from: number;
  readonly to: number;
  /** The figures, in a sentence or two. */
  readonly figures: string;
}
/** An answer, or a sentence that says why there is none. */
export type Said = Answer | string;

const noAnswer = 'The engine as it stands has no answer. Undo, or reset, and ask again.';

/**
 * Asks the graph what would follow; the notebook is not changed. Null where that takes long: it is to be asked for
 * elsewhere. A string says why there is no answer now.
 */
export function answerOf(store: Store, question: Question): Said | null {
  const { of, vary, by, read, beside } = question;
  const now = valueIn(store, vary, of);
  const state = stateIn(store, read, of);
  if (now.is !== 'there' || typeof now.value !== 'number' || !state || state.is === 'fault') return noAnswer;
  try {
    const isOther = of !== undefined && of !== store.document.chosen;
    const at = isOther ? store.others!.snapshot(of) : store.snapshot();
    const reads = beside ? [read, beside] : [read];
    const probe = new Probe(at, [vary], reads);
    if (probe.isSlow) return null;
    const from = reads.map((cell) => valueIn(store, cell, of));
    if (from[0]!.is !== 'there') return noAnswer;
    probe.put(0, now.value + by);
    probe.run();
    return answered(
      store,
      question,
      from.map((found, j) => [
        found.is === 'there' ? found.value : undefined,
        j === 0 ? probe.get(0) : probe.tryGet(j),
      ]),
    );
  } catch (error) {
    if (error instanceof NotSettled) return `${error.cell.label} has no value yet. Ask again in a moment.`;
    if (error instanceof Impossible) return `${say(error.phrase, store.system)} Undo, or reset, and ask again.`;
    throw error;
  }
}

/** Has a question worked out elsewhere. Returns a way to stop it; what it comes to is of the notebook as it stood. */
export function askElsewhere(
  store: Store,
  question: Question,
  hear: { readonly done: (share: number) => void; readonly said: (said: Said) => void },
): () => void {
  const { explorer } = store;
  const { of, vary, by, read, beside } = question;
  const now = valueIn(store, vary, of);
  if (!explorer || now.is !== 'there' || typeof now.value !== 'number') {
    hear.said(noAnswer);
    return () => {};
  }
  const reads = beside?.kind.name === 'scalar' ? [read, beside] : [read];
  const task = {
    ...groundOf(store, of),
    vary: vary.id,
    xs: [now.value, now.value + by],
    fixed: {},
    read: reads.map((cell) => cell.id),
  };
  return explorer.explore('sweep', task, (news) => {
    if (news.is === 'waiting' || news.is === 'coming') hear.done(news.done);
    else if (news.is === 'fault') hear.said(`${say(news.message, store.system)} Undo, or reset, and ask again.`);
    else hear.said(told(store, question, reads, news.result));
  });
}
/** What was worked out quickly is a little off the page's figures, before and after alike: its change is added to those. */
function told(store: Store, question: Question, reads: readonly Cell[], [lines]: SweepResult): Said {
  const changes = reads.map((cell, j): readonly [unknown, unknown] => {
    const [before, after] = Array.from(lines![j]!) as [number, number];
    if (Number.isNaN(after - before)) return [undefined, undefined];
    const found = valueIn(store, cell, question.of);
    const from = found.is === 'there' ? numeric(found.value) : before;
    return [from, from + after - before];
  });
  return answered(store, question, changes, 'about ');
}

function answered(
  store: Store,
  { read, beside }: Question,
  [main, other]: readonly (readonly [unknown, unknown])[],
  about = '',
): Said {
  const [from, to] = main!;
  if (typeof from !== 'number' || typeof to !== 'number') return noAnswer;
  const isSame = textAt(store, placeFor(read), from) === textAt(store, placeFor(read), to);
  const way = isSame ? 'stay' : to > from ? 'rise' : 'fall';
  const isKnown = beside && other && (other[0] !== undefined || other[1] !== undefined);
  const said = [
    went(store, placeFor(read), [from, to], undefined, about),
    ...(isKnown ? [went(store, placeFor(beside), other, undefined, about)] : []),
  ];
  return { way, from, to, figures: said.map((s) => `${s}.`).join(' ') };
}
