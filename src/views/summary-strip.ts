import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { Verdict, VerdictKind } from '../graph/kind.ts';
import { lastGood, present } from '../graph/state.ts';
import { Piece } from './piece.ts';
import { figureOf, quantityOf, shortOf, shownOf } from './words.ts';

/** <summary-strip>: the pinned answers, always in view; each jumps to its place. */
export class SummaryStrip extends Piece {
  private get pins(): readonly Cell[] {
    return this.store.document.pins.flatMap((id) => this.store.catalogue.cells.get(id) ?? []);
  }
  protected override watched(): readonly Cell[] {
    return this.pins;
  }
  protected override render(): TemplateResult {
    return html`<ul class="pins">
      ${this.pins.map(
        (cell) =>
          html`<li>
            <a href="#${cell.id}"
              ><span class="vh">${cell.label}: </span><span class="long" aria-hidden="true">${shortOf(cell)}</span
              ><span class="short" aria-hidden="true">${shortOf(cell).split(' ')[0]}</span>${this.value(cell)}</a
            >
          </li>`,
      )}
    </ul>`;
  }
  private value(cell: Cell): TemplateResult {
    const { store } = this;
    const state = store.state(cell);
    const value = lastGood(state);
    const dim = present(state) === undefined ? 'stale' : '';
    if (cell.kind.name === 'verdict' && value) {
      const { id, label, tone } = (cell.kind as unknown as VerdictKind).words.find(
        (w) => w.id === (value as Verdict).word,
      )!;
      return html`<b class="is-${tone} ${dim}"
        ><span class="sw is-${tone}"></span><span title=${label}>${id}</span></b
      >`;
    }
    if (typeof value !== 'number') return html`<b class=${dim}>…</b>`;
    const { symbol } = quantityOf(cell) ? shownOf(store, cell).unit : { symbol: '' };
    return html`<b class=${dim}>${figureOf(store, cell, value)}</b>${symbol ? html`<i>${symbol}</i>` : nothing}`;
  }
}
customElements.define('summary-strip', SummaryStrip);
declare global {
  interface HTMLElementTagNameMap {
    'summary-strip': SummaryStrip;
  }
}
