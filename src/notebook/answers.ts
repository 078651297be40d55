import type { Json, Scalar, Verdict, VerdictKind } from '../graph/kind.ts';
import { present } from '../graph/state.ts';
import { format } from '../units/format.ts';
import type { Catalogue } from './catalogue.ts';
import type { Document } from './document.ts';
import { Store } from './store.ts';

/** Six digits travel: more than any answer shows. */
const rounded = (n: number): number => Number(n.toPrecision(6));

/** The pinned answers as they stand, to travel with a link. */
export function answersOf(store: Store, release: string): NonNullable<Document['answers']> {
  const values: Record<string, Json> = {};
  for (const id of store.document.pins) {
    const cell = store.catalogue.cells.get(id)!;
    const value = present(store.state(cell));
    if (typeof value === 'number') values[id] = rounded(value);
    else if (cell.kind.name === 'verdict' && value) values[id] = (value as Verdict).word;
  }
  return { release, values };
}

/** What the sender saw and this release finds otherwise, a sentence each; empty where all comes to the same. */
export function whatChanged(catalogue: Catalogue, document: Document, release: string): readonly string[] {
  if (!document.answers) return [];
  const saw = document.answers;
  const store = new Store({ catalogue, open: { document, opened: document } });
  const cells = Object.keys(saw.values).flatMap((id) => catalogue.cells.get(id) ?? []);
  const stopLooking = store.watch(cells, () => {});
  const { system } = document.units;
  const differences = cells.flatMap((cell) => {
    const then = saw.values[cell.id]!;
    const value = present(store.state(cell));
    const { kind } = cell;
    if (kind.name === 'verdict') {
      const now = (value as Verdict | undefined)?.word;
      const label = (word: unknown): string =>
        (kind as unknown as VerdictKind).words.find((w) => w.id === word)?.label ?? String(word);
      return now === then
        ? []
        : [
            `${cell.label}: the sender saw ${label(then)}, here it is ${now === undefined ? 'without an answer' : label(now)}.`,
          ];
    }
    if (typeof then !== 'number' || kind.name !== 'scalar') return [];
    const text = (n: number): string => format(n, (kind as Scalar).quantity, system);
    // Rounded likewise, or a figure near the edge of two shown ones would seem to have changed.
    const now = typeof value === 'number' ? text(rounded(value)) : 'no answer';
    return now === text(then) ? [] : [`${cell.label}: the sender saw ${text(then)}, here it is ${now}.`];
  });
  stopLooking();
  if (differences.length === 0) return [];
  const why =
    saw.release === release
      ? 'The link was changed on its way.'
      : `The sender’s release was ${saw.release}, this is ${release}: its formulas differ.`;
  return [...differences, why];
}
