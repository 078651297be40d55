import { html, type TemplateResult } from 'lit';
import type { LineFigure } from '../plots/line-figure.ts';
import { smallMultiples } from '../plots/small-multiples.ts';
import type { Store } from '../notebook/store.ts';
import { placed } from './overlay.ts';

/**
 * A figure of lines, or, where they would be too many to be told apart, one small one for each variant, each under the
 * variant's name; `whole` is how the figure is drawn that is of the present.
 */
export function plots(store: Store, figure: LineFigure, whole: (figure: LineFigure) => TemplateResult): TemplateResult {
  const { document } = store;
  const variants = placed(document);
  const self = variants.find((v) => v.id === document.chosen)?.place ?? 0;
  const panels = smallMultiples(figure, variants, self);
  if (panels.length === 0) return whole(figure);
  return html`<div class="multiples">
    ${panels.map(
      (panel) =>
        html`<div>
          <p class="sans"><b>${panel.name}</b></p>
          ${panel.figure.mark ? whole(panel.figure) : html`<line-plot .figure=${panel.figure}></line-plot>`}
        </div>`,
    )}
  </div>`;
}
