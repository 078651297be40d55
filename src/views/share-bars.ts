import { html, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { Share } from '../graph/spread.ts';
import type { Store } from '../notebook/store.ts';
import { differenceOf, shortOf } from './words.ts';

/** What the ± of each cell moves a result by, as bars; the shares are given largest first. */
export function shareBars(store: Store, read: Cell, shares: readonly Share[], most: number): readonly TemplateResult[] {
  const longest = shares[0]?.change ?? 1;
  return shares
    .slice(0, most)
    .map(
      (s) =>
        html`<span>${shortOf(s.cell)} ± ${differenceOf(store, s.cell, s.tolerance)}</span
          ><i style="--v:${(s.change / longest).toFixed(3)}"></i><span>${differenceOf(store, read, s.change)}</span>`,
    );
}
