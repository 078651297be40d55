import { html, nothing, type TemplateResult } from 'lit';
import type { Cell, From } from '../graph/cell.ts';
import type { ChapterFigure } from '../graph/chapter.ts';
import { lastGood, present, type State } from '../graph/state.ts';
import type { Store } from '../notebook/store.ts';
import type { WithOthers } from '../plots/variants.ts';
import type { Overlay } from './overlay.ts';
import { workBelow, workLine } from './work-line.ts';
import { lower } from './words.ts';

/** The last good values of cells by the names a form has for them; null where one has none. */
export function valuesOf(from: From, stateOf: (cell: Cell) => State): object | null {
  const entries = Object.entries(from).map(([name, cell]) => [name, lastGood(stateOf(cell))] as const);
  return entries.some(([, value]) => value === undefined) ? null : Object.fromEntries(entries);
}

/** What a figure's form is given; null while there is nothing to draw. */
export function formValues(store: Store, figure: ChapterFigure, overlay: Overlay): object | null {
  const own = valuesOf(figure.from, (cell) => store.state(cell));
  if (own === null) return null;
  // What comes later is not drawn over what it does not belong to.
  const later = Object.entries(figure.later ?? {}).flatMap(([name, cell]) => {
    const value = present(store.state(cell));
    return value === undefined ? [] : [[name, value] as const];
  });
  return {
    ...own,
    ...Object.fromEntries(later),
    ...(figure.plusMinus ? { plusMinus: store.spread(figure.plusMinus)?.plusMinus ?? 0 } : {}),
    ...(figure.overlays ? withOthers(store, figure, overlay) : {}),
  };
}

/** What a figure that shows the other variants is given of them, as far as they are there. */
function withOthers(store: Store, { from }: ChapterFigure, { self, others }: Overlay): WithOthers<object> {
  const shown = others.flatMap(({ id, ...variant }) => {
    const values = valuesOf(from, (cell) => store.others!.state(id, cell));
    return values === null ? [] : [{ ...variant, values }];
  });
  return self && shown.length > 0 ? { self, others: shown } : {};
}

/** What is looked at for the sake of what comes later: the cells, and the work they wait for. */
export const lateCells = (store: Store, { later = {} }: ChapterFigure): readonly Cell[] =>
  Object.values(later).flatMap((c) => [c, workBelow(store, c) ?? []].flat());

/** How far the work is on what comes later. */
export function toCome(store: Store, { later = {} }: ChapterFigure): TemplateResult | typeof nothing {
  for (const cell of Object.values(later)) {
    const work = workBelow(store, cell);
    if (work)
      return html`<div class="to-come">
        <small>Still to come: ${lower(cell.label)}.</small> ${workLine(store, work, store.state(work))}
      </div>`;
  }
  return nothing;
}
