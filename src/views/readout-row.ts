import { html, nothing, type TemplateResult } from 'lit';
import type { Cell, Derived } from '../graph/cell.ts';
import { fieldsOf } from '../graph/chapter.ts';
import { sentence, type Verdict, type VerdictKind } from '../graph/kind.ts';
import { lastGood, type State } from '../graph/state.ts';
import { type Phrase, say } from '../units/phrase.ts';
import { errorCellsOf, plusMinusOf } from './model-error.ts';
import { Piece } from './piece.ts';
import { workLine } from './work-line.ts';
import { differenceOf, figureOf, lower, quantityOf, shownOf, unitOf, when } from './words.ts';
import './field-notes.ts';

/** <readout-row>: one answer: label, value, unit, and why. */
export class ReadoutRow extends Piece {
  static override properties = { ...Piece.properties, cell: { attribute: false }, open: { state: true } };
  declare cell: Exclude<Cell, { role: 'input' }>;
  declare open: boolean;

  constructor() {
    super();
    this.open = false;
  }
  protected override watched(): readonly Cell[] {
    const { cell } = this;
    return [cell, ...errorCellsOf(cell), ...Object.keys(cell.valid).map((name) => cell.from[name]!)];
  }

  private turn(): void {
    void import('./why-panel.ts'); // nobody asks why on the first screen
    this.open = !this.open;
  }
  /** A cell that is a field as well has its place there. */
  private get anchor(): string {
    const { cell, store } = this;
    const isField = store.catalogue.chapters.some((c) => fieldsOf(c).includes(cell));
    return isField ? `row-${cell.id}` : cell.id;
  }
  protected override render(): TemplateResult {
    const { cell, store } = this;
    const state = store.state(cell);
    const value = lastGood(state);
    if (cell.kind.name === 'remark' && value === null) return html``; // it has nothing to say
    const held = store.live.isHeld(cell);
    const quantity = quantityOf(cell);
    const outside = trustOf(this.store, cell, value);
    const look = `${state.is === 'fault' || state.is === 'waiting' ? 'wait' : ''} ${state.is === 'coming' || (state.is === 'waiting' && cell.role === 'slow') ? 'coming' : ''} ${held ? 'held' : ''} ${outside ? 'out' : ''}`;
    const wordy = cell.kind.name === 'verdict' || cell.kind.name === 'remark';
    return html`<div class="row ${look}" id=${this.anchor} aria-busy=${state.is === 'waiting' || state.is === 'coming'}>
        <span
          >${cell.label}
          <button class="why" aria-expanded=${this.open} aria-label="Why: ${cell.label}" @click=${() => this.turn()}>
            why
          </button></span
        >
        ${wordy ? html`<span class="val">${this.word(value)}</span><span class="unit"></span>` : html`<span class="val">${this.figure(value)}</span><span class="unit">${quantity ? unitOf(store, cell) : ''}${this.plusMinus(state)}</span>`}
        ${when(wordy && value, () => html`<small class="said">${say(this.sentence(value), store.system)}</small>`)}
        ${this.progress(state)} ${when(state.is === 'fault', () => this.faultNote(state))}
        ${when(outside, () => html`<small>${outside}</small>`)}
        ${when(held, () => html`<field-notes .store=${store} .cell=${cell}></field-notes>`)}
      </div>
      ${this.open ? html`<why-panel .store=${store} .cell=${cell}></why-panel>` : nothing}`;
  }
  private figure(value: unknown): string {
    const { cell, store } = this;
    if (value === null) return 'not given';
    if (typeof value === 'number') return figureOf(store, cell, value);
    if (cell.kind.name === 'curve') return value === undefined ? '…' : 'drawn';
    return value === undefined ? '…' : cell.kind.text(value, store.systemOf(cell));
  }
  private word(value: unknown): TemplateResult | string {
    if (this.cell.kind.name !== 'verdict') return '';
    if (value === undefined) return '…';
    const kind = this.cell.kind as unknown as VerdictKind;
    const { label, tone } = kind.words.find((w) => w.id === (value as Verdict).word)!;
    return html`<b class="is-${tone}"><span class="sw is-${tone}"></span>${label}</b>`;
  }
  private sentence(value: unknown): Phrase {
    const { cell, store } = this;
    return cell.kind.name === 'verdict'
      ? sentence(cell.kind as unknown as VerdictKind, value as Verdict, store.spread(cell)?.plusMinus)
      : (value as Phrase);
  }
  private plusMinus(state: State): TemplateResult | typeof nothing {
    if (state.is !== 'ready' || this.cell.kind.name !== 'scalar') return nothing;
    const plusMinus = plusMinusOf(this.store, this.cell);
    const text = plusMinus === null ? '' : differenceOf(this.store, this.cell, plusMinus);
    return /[1-9]/.test(text) ? html` <span class="pm">± ${text}</span>` : nothing;
  }
  private progress(state: State): TemplateResult | typeof nothing {
    const { cell, store } = this;
    return cell.role === 'slow' ? (workLine(store, cell, state) ?? nothing) : nothing;
  }
  private faultNote(state: State): TemplateResult | typeof nothing {
    if (state.is !== 'fault') return nothing;
    const { cell, store } = this;
    if (state.fault.about === cell.id)
      return html`<small class="fault">${say(state.fault.message, store.system)}</small>`;
    const at = store.catalogue.cells.get(state.fault.about);
    return html`<small
      >Waits for <a href="#${state.fault.about}">${at ? lower(at.label) : state.fault.about}</a>.</small
    >`;
  }
}

/** A sentence where a value, or something it reads, leaves the range it can be trusted in. */
export function trustOf(store: Piece['store'], cell: Cell, value: unknown): string | null {
  if (cell.role === 'input') return null;
  const derived: Derived<unknown> = cell;
  for (const [name, [low, high]] of Object.entries(derived.valid)) {
    const source = derived.from[name]!;
    const v = lastGood(store.state(source));
    if (typeof v === 'number' && (v < low || v > high))
      return (
        `Not valid here: made for ${lower(source.label)} from ${figureOf(store, source, low)} to ${figureOf(store, source, high)} ${shownOf(store, source).unit.symbol}`.trim() +
        '.'
      );
  }
  if (!derived.validValue || typeof value !== 'number') return null;
  const [low, high] = derived.validValue;
  return value < low || value > high
    ? `Not valid here: accepted from ${figureOf(store, cell, low)} to ${figureOf(store, cell, high)}.`
    : null;
}
customElements.define('readout-row', ReadoutRow);
declare global {
  interface HTMLElementTagNameMap {
    'readout-row': ReadoutRow;
  }
}
