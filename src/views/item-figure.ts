import { html, type TemplateResult } from 'lit';
import type { FigureItem } from '../notebook/document.ts';
import type { Store } from '../notebook/store.ts';
import './sweep-figure.ts';

interface Drawn<T> {
  readonly item: T;
  readonly store: Store;
  readonly number: number;
}
type Figures = { readonly [T in FigureItem['type']]: (of: Drawn<Extract<FigureItem, { type: T }>>) => TemplateResult };

// All but sweeps are loaded when a page holds one.
const figures: Figures = {
  sweep: ({ item, store, number }) =>
    html`<sweep-figure .store=${store} .item=${item} .number=${number}></sweep-figure>`,
  map: ({ item, store, number }) => {
    void import('./map-figure.ts');
    return html`<map-figure .store=${store} .item=${item} .explorer=${store.explorer} .number=${number}></map-figure>`;
  },
  draws: ({ item, store, number }) => {
    void import('./draws-figure.ts');
    return html`<draws-figure
      .store=${store}
      .item=${item}
      .explorer=${store.explorer}
      .number=${number}
    ></draws-figure>`;
  },
  best: ({ item, store, number }) => {
    void import('./best-panel.ts');
    return html`<best-panel .store=${store} .item=${item} .explorer=${store.explorer} .number=${number}></best-panel>`;
  },
};

/** The element that shows an item of the page. */
export const itemFigure = (of: Drawn<FigureItem>): TemplateResult =>
  (figures[of.item.type] as (of: Drawn<FigureItem>) => TemplateResult)(of);
