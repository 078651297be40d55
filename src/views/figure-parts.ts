import { html, type LitElement, type TemplateResult } from 'lit';
import type { Store } from '../notebook/store.ts';
import type { Twin } from '../plots/drawing.ts';
import { lower } from './words.ts';
import './figure-tools.ts';

/** The line over a figure that is not of the present, or has not been there yet. */
export function waitsFor(store: Store, id: string, isThere = true): TemplateResult {
  const at = store.catalogue.cells.get(id);
  return html`<p class="stale-note">
    Waits for <a href="#${id}">${at ? lower(at.label) : id}</a>.${isThere ? ' This is the last good figure.' : ''}
  </p>`;
}

/** The tools under a figure whose element keeps `table` as its state. */
export const figureTools = (
  of: LitElement & { table: boolean },
  { title, twin }: { readonly title: string; readonly twin: () => Twin },
): TemplateResult =>
  html`<figure-tools
    .table=${of.table}
    .shelf=${() => ({ title, twin: twin() })}
    .picture=${() => of.querySelector<SVGSVGElement>('.frame svg')}
    @table=${() => (of.table = !of.table)}
  ></figure-tools>`;

/** Said over a figure while a slow one takes its place. */
export const workedAnew = 'Being worked out anew. This is the last good figure.';
