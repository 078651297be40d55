import { html, nothing, type TemplateResult } from 'lit';
import { readDifference } from '../formula/read.ts';
import type { Cell } from '../graph/cell.ts';
import { Piece } from './piece.ts';
import { differenceOf, lower, quantityOf, shownOf } from './words.ts';

/** <tolerance-button>: the ± of a field, typed in place. */
export class ToleranceButton extends Piece {
  static override properties = {
    ...Piece.properties,
    cell: { attribute: false },
    open: { state: true },
    fault: { state: true },
  };
  declare cell: Cell;
  declare open: boolean;
  declare fault: string | null;

  constructor() {
    super();
    this.open = false;
    this.fault = null;
  }
  private write(text: string): void {
    const { cell, store } = this;
    const got = text.trim() === '' ? { si: 0 } : readDifference(text, quantityOf(cell)!, shownOf(store, cell));
    if ('fault' in got || got.si < 0) {
      this.fault = 'fault' in got ? got.fault : 'A ± is not negative.';
      return;
    }
    this.fault = null;
    this.open = false;
    store.change({ what: `Set the ± of ${lower(cell.label)}`, place: cell.id }, (draft) => {
      if (got.si === 0) delete draft.tolerances[cell.id];
      else draft.tolerances[cell.id] = got.si;
    });
    this.requestUpdate();
  }
  private async begin(): Promise<void> {
    this.open = true;
    await this.updateComplete;
    this.querySelector('input')?.select();
  }
  protected override render(): TemplateResult | typeof nothing {
    const { cell, store } = this;
    const stands = cell.role === 'input' || store.live.isHeld(cell);
    if (!stands || (shownOf(store, cell).unit.symbol === '' && cell.kind.name !== 'scalar')) return nothing;
    const now = store.document.tolerances[cell.id];
    const text = now === undefined ? '' : differenceOf(store, cell, now);
    if (!this.open)
      return html`±
        <button aria-label="Tolerance of ${cell.label}, ${text || 'none: add'}" @click=${() => void this.begin()}>
          ${text || 'add'}
        </button>`;
    return html`±
      <input
        class="tolerance"
        inputmode="decimal"
        aria-label="Tolerance of ${cell.label}"
        .value=${text}
        title=${this.fault ?? nothing}
        aria-invalid=${this.fault ? 'true' : 'false'}
        @keydown=${(e: KeyboardEvent) => {
          if (e.key === 'Enter') this.write((e.target as HTMLInputElement).value);
          if (e.key === 'Escape') this.open = false;
        }}
        @blur=${(e: FocusEvent) => this.open && this.write((e.target as HTMLInputElement).value)}
      />`;
  }
}
customElements.define('tolerance-button', ToleranceButton);
declare global {
  interface HTMLElementTagNameMap {
    'tolerance-button': ToleranceButton;
  }
}
