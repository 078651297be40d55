import type { Draft } from 'immer';
import { baseValue } from './base.ts';
import { type Document, layered, longestName, mostVariants, type Variant } from './document.ts';
import type { Edit } from './history.ts';
import type { Store } from './store.ts';

/** What is done to variants is said across the page, with a way back. */
const step = (what: string): Edit => ({ what, place: 'variants', announce: true });

/**
 * Adds a variant that starts as a copy of the one looked at, or as the notebook itself where none is, and looks at it.
 * The first one makes two: what is there stays as "A", and the copy is "B", so that nothing that is typed from then on
 * changes what was there. Returns a sentence where there is no room, else null.
 */
export function addVariant(store: Store): string | null {
  const { variants, chosen } = store.document;
  if (variants.length >= mostVariants) return `A notebook holds at most ${mostVariants} variants. Remove one first.`;
  const source = variants.find((v) => v.id === chosen);
  const first = variants.length === 0 ? [fresh(store, [])] : [];
  const added = fresh(store, [...variants, ...first], source);
  const of = source ? `, a copy of ${source.name}` : first[0] ? `: what was there is ${first[0].name} now` : '';
  store.change(step(`Added ${added.name}${of}`), (draft) => {
    draft.variants.push(...([...first, added] as Draft<Variant>[]));
    draft.chosen = added.id;
  });
  return null;
}

/** Gives a variant another name. Returns a sentence where it cannot be called so, else null. */
export function renameVariant(store: Store, id: string, text: string): string | null {
  const { variants } = store.document;
  const name = text.trim().replaceAll(/\s+/g, ' ');
  const now = variants.find((v) => v.id === id);
  if (!now || now.name === name) return null;
  if (name === '') return 'A variant has a name: write at least one letter.';
  if (name.length > longestName) return `A name has at most ${longestName} characters.`;
  const twin = variants.find((v) => v.id !== id && v.name.toLowerCase() === name.toLowerCase());
  if (twin) return `Another variant is called “${twin.name}”. Write a name of its own.`;
  store.change({ what: `Renamed ${now.name} to ${name}`, place: 'variants' }, (draft) => {
    draft.variants.find((v) => v.id === id)!.name = name;
  });
  return null;
}

/**
 * Removes a variant; what it alone held goes with it. Of the last two, the one that is left is the notebook from then
 * on; after one that was alone, the notebook itself is.
 */
export function removeVariant(store: Store, id: string): void {
  const { variants, chosen } = store.document;
  const at = variants.findIndex((v) => v.id === id);
  if (at < 0) return;
  const gone = variants[at]!;
  const left = variants.filter((v) => v !== gone);
  const [only] = left;
  if (only && left.length === 1)
    return store.change(step(`Removed ${gone.name}: the notebook is ${only.name} now`), (draft) =>
      become(draft, store.document, only.id),
    );
  const next = chosen === id ? (left[Math.min(at, left.length - 1)]?.id ?? null) : chosen;
  store.change(step(`Removed ${gone.name}`), (draft) => {
    draft.variants.splice(at, 1);
    draft.chosen = next;
  });
}

/** The notebook takes over what a variant says, and holds no variants any more. */
export function keepOnly(store: Store, id: string): void {
  const kept = store.document.variants.find((v) => v.id === id);
  if (kept) store.change(step(`Kept only ${kept.name}`), (draft) => become(draft, store.document, id));
}

/** Moves a variant among the others, by places to the right; as far as there are any. */
export function moveVariant(store: Store, id: string, by: number): void {
  const { variants } = store.document;
  const from = variants.findIndex((v) => v.id === id);
  const to = Math.min(variants.length - 1, Math.max(0, from + by));
  if (from < 0 || from === to) return;
  store.change(
    { what: `Moved ${variants[from]!.name} to the ${by < 0 ? 'left' : 'right'}`, place: 'variants' },
    (draft) => {
      draft.variants.splice(to, 0, ...draft.variants.splice(from, 1));
    },
  );
}

function become(draft: Draft<Document>, document: Document, id: string): void {
  const { inputs, held } = layered(document, id);
  const differs = ([name, saved]: readonly [string, unknown]): boolean =>
    JSON.stringify(saved) !== JSON.stringify(baseValue(document.base, name));
  draft.inputs = Object.fromEntries(Object.entries(inputs).filter(differs)) as Draft<Document>['inputs'];
  draft.held = { ...held } as Draft<Document>['held'];
  draft.variants = [];
  draft.chosen = null;
}

/** A variant under the next letter that is free. */
function fresh({ opened }: Store, others: readonly Variant[], source?: Variant): Variant {
  const names = others.map((v) => v.name.toLowerCase());
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'.split('');
  const inOrder = [...letters.slice(others.length), ...letters];
  const name = inOrder.find((letter) => !names.includes(letter.toLowerCase()))!;
  // Nor the id of one that was there at the start: its starting values are not this one's.
  const ids = [...others, ...opened.variants].map((v) => v.id);
  let n = others.length + 1;
  while (ids.includes(`variant${n}`)) n++;
  return { id: `variant${n}`, name, inputs: { ...source?.inputs }, held: { ...source?.held } };
}
