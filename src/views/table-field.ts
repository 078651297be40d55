import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Input } from '../graph/cell.ts';
import type { Rows, Table } from '../graph/kind.ts';
import { lastGood } from '../graph/state.ts';
import { tableText, typedTable } from '../graph/typed-table.ts';
import type { Store } from '../notebook/store.ts';
import { format } from '../units/format.ts';
import { Piece } from './piece.ts';
import { lower, when } from './words.ts';
import './field-notes.ts';

/** What was typed and is no table yet, and why: it outlives the field, which goes when its chapter is closed. */
interface Half {
  readonly text: string;
  readonly fault: string | null;
}
const halves = new WeakMap<Store, Map<string, Half>>();

/**
 * <table-field>: rows pasted or typed, a line each. They are read when the field is left, as one step; what cannot be
 * read stays as it was typed, with a sentence, and the table before it stands.
 */
export class TableField extends Piece {
  static override properties = {
    ...Piece.properties,
    cell: { attribute: false },
    name: {},
    notice: { state: true },
  };
  declare cell: Input<Rows>;
  /** Tells several fields of one cell apart. */
  declare name: string;
  declare notice: string | null;
  private seen: Rows | undefined;

  constructor() {
    super();
    this.name = 'table';
    this.notice = null;
  }
  protected override watched(): readonly Input<Rows>[] {
    return [this.cell];
  }
  /** Nothing typed here outlives another table from elsewhere: undo, reset, another notebook. */
  protected override willUpdate(): void {
    super.willUpdate();
    const { rows } = this;
    if (this.seen && !this.cell.kind.same(this.seen, rows)) {
      this.half = null;
      this.notice = null;
    }
    this.seen = rows;
  }

  private get kind(): Table {
    return this.cell.kind as Table;
  }
  private get rows(): Rows {
    return lastGood(this.store.state(this.cell)) ?? [];
  }
  private get half(): Half | null {
    return halves.get(this.store)?.get(this.cell.id) ?? null;
  }
  private set half(half: Half | null) {
    const kept = halves.get(this.store) ?? new Map<string, Half>();
    halves.set(this.store, kept);
    if (half) kept.set(this.cell.id, half);
    else kept.delete(this.cell.id);
    this.requestUpdate();
  }

  private type(text: string): void {
    this.half = { text, fault: null };
    this.notice = null;
  }
  /** Reads what is in the box. */
  private use(): void {
    const { cell, kind, store, half } = this;
    if (!half) return;
    const got = typedTable(kind, half.text, store.systemOf(cell));
    if ('fault' in got) {
      const still = this.rows.length > 0 ? ' The table before it is still used.' : '';
      this.half = { text: half.text, fault: got.fault + still };
      return;
    }
    const { rows, notice } = got;
    const name = lower(cell.label);
    const what = rows.length > 0 ? `Set ${name} to ${rows.length} rows` : `Cleared ${name}`;
    this.half = null;
    store.set([[cell, rows]], { what, place: cell.id });
    this.seen = this.rows;
    this.notice = notice;
  }
  private giveUp(): void {
    this.half = null;
    this.notice = null;
  }
  private key(event: KeyboardEvent): void {
    if (event.key === 'Escape') this.giveUp();
    const isCommand = event.ctrlKey || event.metaKey;
    if (isCommand && event.key === 'Enter') this.use();
    if (isCommand && /^[yz]$/i.test(event.key)) event.stopPropagation(); // the box has its own undo
  }

  protected override render(): TemplateResult {
    const { cell, kind, store, rows, half } = this;
    const id = `${this.name}-${cell.id}`;
    const system = store.systemOf(cell);
    const fault = half ? half.fault : store.faultAbout(cell);
    const changed = store.isChanged(cell);
    const columns = kind.columns.map((c) => `${lower(c.label)} (${c.quantity[system].unit.symbol})`).join(', ');
    return html`<div class="field table ${fault ? 'bad' : ''} ${changed ? 'changed' : ''}" id=${cell.id}>
      <span
        ><label for=${id}>${cell.label}: ${columns}</label>${when(
          changed,
          () =>
            html`<button
              class="reset link"
              aria-label="reset ${cell.label}"
              @click=${() => store.reset(cell, { what: `Reset ${lower(cell.label)}`, place: cell.id })}
            >
              reset
            </button>`,
        )}</span
      >
      <textarea
        id=${id}
        rows="6"
        autocomplete="off"
        spellcheck="false"
        placeholder="Paste the rows here, one a line"
        .value=${live(half ? half.text : tableText(kind, rows, system))}
        aria-invalid=${fault ? 'true' : 'false'}
        aria-describedby="${id}-note${fault ? ` ${id}-fault` : ''}"
        @keydown=${(e: KeyboardEvent) => this.key(e)}
        @input=${(e: InputEvent) => this.type((e.target as HTMLTextAreaElement).value)}
        @change=${() => this.use()}
      ></textarea>
      <button class="take" @click=${() => this.use()}>Use this table</button>
      <small role="status">${this.says()}</small>
      ${fault ? html`<p class="fault" id="${id}-fault" role="alert">${fault}</p>` : nothing}
      <small id="${id}-note">${cell.note}</small>
      <field-notes .store=${store} .cell=${cell}></field-notes>
    </div>`;
  }
  /** How many rows there are, and where the last column is highest. */
  private says(): string {
    const { kind, rows, cell, store, notice, half } = this;
    if (half) return half.fault === null ? 'Not read yet.' : '';
    if (rows.length === 0) return '';
    const last = kind.columns.length - 1;
    const top = rows.reduce((best, row) => (row[last]! > best[last]! ? row : best));
    const [at, peak] = [0, last].map((i) => format(top[i]!, kind.columns[i]!.quantity, store.systemOf(cell)));
    const said = `${rows.length} rows, peak ${lower(kind.columns[last]!.label)} ${peak} at ${at}.`;
    return notice ? `${said} ${notice}` : said;
  }
}
customElements.define('table-field', TableField);
declare global {
  interface HTMLElementTagNameMap {
    'table-field': TableField;
  }
}
