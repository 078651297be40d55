import { catalogue as cells, chapters } from '../../cells/index.ts';
import '../../cells/output/cycle.work.ts';
import type { Cell, Input } from '../../src/graph/cell.ts';
import { present } from '../../src/graph/state.ts';
import type { Catalogue } from '../../src/notebook/catalogue.ts';
import type { Document } from '../../src/notebook/document.ts';
import { restore } from '../../src/notebook/restore.ts';
import { Store } from '../../src/notebook/store.ts';
import edge from '../../scenarios/edge-of-premium.json';
import four from '../../scenarios/milled-four.json';
import six from '../../scenarios/mountain-six.json';
import twoCams from '../../scenarios/two-cams.json';

export const catalogue: Catalogue = { cells, chapters };

/** A guide stays with its file: no notebook holds it. */
const { guide: _, ...cams } = twoCams;
/** The starting points as their files have them, by the names of the files. */
export const scenarios: Readonly<Record<string, unknown>> = {
  'edge-of-premium': edge,
  'two-cams': cams,
  'mountain-six': six,
  'milled-four': four,
};
export const example = edge as unknown as Document;
/** What `restore` makes of a notebook that says nothing. */
export const blank: Document = restore({}, catalogue, example).document;

export const scenario = (name: string): Document => restore(scenarios[name], catalogue, example).document;

export const cellOf = (id: string): Cell => {
  const found = cells.get(id);
  if (!found) throw new Error(`no cell is called ${id}`);
  return found;
};
export const inputOf = (id: string): Input => cellOf(id) as Input;

const standsOnSlow = (cell: Cell): boolean =>
  cell.role === 'slow' || (cell.role === 'cell' && Object.values(cell.from).some(standsOnSlow));
/** What is computed at once. */
export const quick: readonly Cell[] = [...cells.values()].filter((cell) => !standsOnSlow(cell));

/** A notebook open on a document, with cells looked at: what is computed at once, unless others are named. */
export function opened(document: Document, variant: string | null = document.chosen, looked = quick): Store {
  const store = new Store({ catalogue, open: { document: { ...document, chosen: variant }, opened: document } });
  store.watch(looked, () => {});
  return store;
}

/** The present value of a cell; an error where it has none. */
export function valueOf(store: Store, id: string): unknown {
  const state = store.state(cellOf(id));
  const value = present(state);
  if (value === undefined) throw new Error(`${id} has no value: ${JSON.stringify(state)}`);
  return value;
}
export const figureOf = (store: Store, id: string): number => {
  const value = valueOf(store, id);
  if (typeof value !== 'number') throw new Error(`${id} is no figure: ${JSON.stringify(value)}`);
  return value;
};
export const wordOf = (store: Store, id: string): string => (valueOf(store, id) as { readonly word: string }).word;
