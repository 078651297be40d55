import { html, type TemplateResult } from 'lit';
import type { Explorer } from '../graph/explorer.ts';
import type { FigureItem } from '../notebook/document.ts';
import type { Store } from '../notebook/store.ts';
import './best-panel.ts';
import './draws-figure.ts';
import './map-figure.ts';
import './sweep-figure.ts';

interface Drawn<T> {
  readonly item: T;
  readonly store: Store;
  readonly explorer: Explorer | null;
  readonly number: number;
}
type Figures = { readonly [T in FigureItem['type']]: (of: Drawn<Extract<FigureItem, { type: T }>>) => TemplateResult };

const figures: Figures = {
  sweep: ({ item, store, explorer, number }) =>
    html`<sweep-figure .store=${store} .item=${item} .explorer=${explorer} .number=${number}></sweep-figure>`,
  map: ({ item, store, explorer, number }) =>
    html`<map-figure .store=${store} .item=${item} .explorer=${explorer} .number=${number}></map-figure>`,
  draws: ({ item, store, explorer, number }) =>
    html`<draws-figure .store=${store} .item=${item} .explorer=${explorer} .number=${number}></draws-figure>`,
  best: ({ item, store, explorer, number }) =>
    html`<best-panel .store=${store} .item=${item} .explorer=${explorer} .number=${number}></best-panel>`,
};

/** The element that shows an item of the page. */
export const itemFigure = (of: Drawn<FigureItem>): TemplateResult =>
  (figures[of.item.type] as (of: Drawn<FigureItem>) => TemplateResult)(of);
