import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import { present } from '../graph/state.ts';
import { type Phrase, say } from '../units/phrase.ts';
import { Piece } from './piece.ts';
import { figureOf, lower, shownOf } from './words.ts';

/** <field-notes>: what is said under a field: held and computed side by side, remarks, leaving the range of trust. */
export class FieldNotes extends Piece {
  static override properties = { ...Piece.properties, cell: { attribute: false } };
  declare cell: Cell;

  private get remarks(): readonly Cell[] {
    return [...this.store.catalogue.cells.values()].filter((c) => c.role !== 'input' && c.about === this.cell);
  }
  protected override watched(): readonly Cell[] {
    const { cell, remarks } = this;
    // What it would be, computed, moves with what it reads.
    return [cell, ...remarks, ...(cell.role === 'input' ? [] : Object.values(cell.from))];
  }
  protected override render(): TemplateResult {
    return html`${this.heldNote()}${this.trustNote()}${this.remarks.map((remark) => {
      const said = present(this.store.state(remark)) as Phrase | null | undefined;
      return said ? html`<small class="remark" role="status">${say(said, this.store.system)}</small>` : nothing;
    })}`;
  }
  private heldNote(): TemplateResult | typeof nothing {
    const { cell, store } = this;
    if (cell.role === 'input') return nothing;
    if (!store.live.isHeld(cell))
      return cell.movedBy.length > 0 ? nothing : html`<small>Computed. What you type is held, as measured.</small>`;
    const would = store.live.computed(cell);
    const computed =
      would.is === 'ready' && typeof would.value === 'number'
        ? `Computed it would be ${figureOf(store, cell, would.value)}. `
        : '';
    return html`<small
      ><b>Held</b>, as measured. ${computed}<button
        class="link"
        aria-label="let go of ${cell.label}"
        @click=${() => store.letGo(cell, { what: `Let go of ${lower(cell.label)}`, place: cell.id, announce: true })}
      >
        let go
      </button></small
    >`;
  }
  private trustNote(): TemplateResult | typeof nothing {
    const { cell, store } = this;
    const value = present(store.state(cell));
    if (cell.role !== 'input' || !cell.trust || typeof value !== 'number') return nothing;
    const [low, high] = cell.trust;
    if (value >= low && value <= high) return nothing;
    const { symbol } = shownOf(store, cell).unit;
    return html`<small
      >Figured all the same. The formulas were agreed for ${figureOf(store, cell, low)} to
      ${figureOf(store, cell, high)} ${symbol}.</small
    >`;
  }
}
customElements.define('field-notes', FieldNotes);
declare global {
  interface HTMLElementTagNameMap {
    'field-notes': FieldNotes;
  }
}
