import type { Cell } from '../graph/cell.ts';
import { answersOf, fieldsOf, isWhen } from '../graph/chapter.ts';
import { upstream } from '../graph/compile.ts';
import type { Json } from '../graph/kind.ts';
import { baseValue } from './base.ts';
import type { Catalogue } from './catalogue.ts';
import { type Document, layered } from './document.ts';
import type { Store } from './store.ts';

/** Variants by their ids; null is the notebook itself. */
type Ids = readonly (string | null)[];

/**
 * What differs going in, in the order of the page: inputs that these variants do not all set alike, and figures that
 * they do not all hold alike. A field that none of their choices asks for is left out.
 */
export function goingIn(document: Document, { cells, chapters }: Catalogue, ids: Ids): readonly Cell[] {
  const layers = ids.map((id) => layered(document, id));
  const setTo = (c: Cell): readonly (Json | undefined)[] =>
    layers.map(({ inputs, held }) =>
      c.role === 'input' ? (inputs[c.id] ?? baseValue(document.base, c.id)) : held[c.id],
    );
  const isDifferent = (c: Cell): boolean => new Set(setTo(c).map((saved) => JSON.stringify(saved))).size > 1;
  const fields = chapters.flatMap(({ fields, groups = [] }) => [fields, ...groups.map((g) => g.fields)].flat());
  const isAsked = (c: Cell): boolean => {
    const own = fields.filter((f) => (isWhen(f) ? f.field : f) === c);
    return (
      own.length === 0 ||
      own.some((f) => !isWhen(f) || setTo(f.when).some((now) => f.is.some((wanted) => wanted === now)))
    );
  };
  // Only what some variant says something of can differ.
  const said = new Set(document.variants.flatMap(({ inputs, held }) => Object.keys({ ...inputs, ...held })));
  const order = [...chapters.flatMap((c) => [...fieldsOf(c), ...answersOf(c)]), ...cells.values()];
  return [...new Set(order.filter((c) => said.has(c.id)))].filter((c) => isDifferent(c) && isAsked(c));
}

/** What comes out: the pinned answers, and what the page compares besides; what goes in is not named twice. */
export function comingOut(
  { pins }: Document,
  { cells, compared = [] }: Catalogue,
  given: readonly Cell[],
): readonly Cell[] {
  const pinned = pins.flatMap((id) => cells.get(id) ?? []);
  const others = pinned.filter((c) => !compared.includes(c));
  return [...others, ...compared].filter((c) => !given.includes(c) && c.role !== 'input');
}

/** The slow cells that some cells stand on. */
export function slowUnder({ live: { graph } }: Store, cells: readonly Cell[]): readonly Cell[] {
  const stands = upstream(
    graph,
    cells.map((c) => graph.slotOf.get(c)!),
  );
  return graph.order.filter((c, i) => c.role === 'slow' && stands[i] === 1);
}
