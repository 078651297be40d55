import { html, nothing, type TemplateResult } from 'lit';
import type { Cell, Derived } from '../graph/cell.ts';
import type { ModelError } from '../graph/model-error.ts';
import type { Store } from '../notebook/store.ts';
import { say } from '../units/phrase.ts';
import { workBelow, workLine } from './work-line.ts';
import { differenceOf, differenceWithUnit } from './words.ts';

/** How many shares are shown. */
const most = 8;
type Result = Exclude<Cell, { role: 'input' }>;

/** The cells that whoever shows a result with its ± looks at besides it. */
export const errorCellsOf = ({ modelError }: Derived<unknown>): readonly Cell[] =>
  typeof modelError === 'object' ? [modelError] : [];
/** The same, and the work that is to be told of. */
export const errorWorkOf = (store: Store, cell: Derived<unknown>): readonly Cell[] =>
  errorCellsOf(cell).flatMap((error) => [error, workBelow(store, error) ?? []].flat());

/**
 * The ± of a figure: what the tolerances make of it and what the model leaves open, together; null while the latter is
 * still being worked out, or where nothing is said of either.
 */
export function plusMinusOf(store: Store, cell: Result): number | null {
  const spread = store.spread(cell)?.plusMinus;
  const { modelError } = cell;
  // A value someone measured and held is not the model's.
  if (modelError === undefined || store.live.isHeld(cell)) return spread ?? null;
  if (typeof modelError === 'number') return Math.hypot(spread ?? 0, modelError);
  const state = store.state(modelError);
  return state.is === 'ready' ? Math.hypot(spread ?? 0, state.value.plusMinus) : null;
}

/** What the model leaves open, for the panel that says why. */
export function leftOpen(store: Store, cell: Result): TemplateResult | typeof nothing {
  const { modelError } = cell;
  if (modelError === undefined || store.live.isHeld(cell)) return nothing;
  return html`<dt>What the model leaves open</dt>
    ${typeof modelError === 'number' ? plain(store, cell, modelError) : worked(store, cell, modelError)}`;
}

const plain = (store: Store, cell: Result, plusMinus: number): TemplateResult =>
  html`<dd>
    The model itself is good for ± ${differenceWithUnit(store, cell, plusMinus)}, however exact the figures it is given.
  </dd>`;

function worked(store: Store, cell: Result, error: Cell<ModelError>): TemplateResult {
  const state = store.state(error);
  if (state.is === 'ready') return bars(store, cell, state.value);
  if (state.is === 'fault') return html`<dd>${say(state.fault.message, store.system)}</dd>`;
  const work = workBelow(store, error);
  return html`<dd>
    It is worked out while nothing else waits. ${work ? workLine(store, work, store.state(work)) : nothing}
  </dd>`;
}
function bars(store: Store, cell: Result, { plusMinus, shares }: ModelError): TemplateResult {
  const largest = shares.toSorted((a, b) => Math.abs(b.change) - Math.abs(a.change)).slice(0, most);
  const longest = Math.abs(largest[0]?.change ?? 0) || 1;
  return html`<dd>Together ± ${differenceWithUnit(store, cell, plusMinus)}: about two engines in three lie inside.</dd>
    <dd class="bars">
      ${largest.map(
        ({ label, change }) =>
          html`<span>${label}</span><i style="--v:${(Math.abs(change) / longest).toFixed(3)}"></i
            ><span>${differenceOf(store, cell, Math.abs(change))}</span>`,
      )}
    </dd>`;
}
