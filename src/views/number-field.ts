import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { read } from '../formula/read.ts';
import type { Cell, Range } from '../graph/cell.ts';
import { outOfRange } from '../graph/compute.ts';
import { Impossible, lastGood, present } from '../graph/state.ts';
import { say } from '../units/phrase.ts';
import { fromUnit, tidy, toUnit } from '../units/unit.ts';
import { Gesture } from './gesture.ts';
import { Piece } from './piece.ts';
import { figureOf, lower, quantityOf, shownOf, spoken, unitOf, when } from './words.ts';
import './field-notes.ts';
import './tolerance-button.ts';

/**
 * <number-field>: a figure that is typed, stepped with the arrow keys, or slid. It writes only what a person does, so
 * looking at a value never changes it. A derived cell that something moves, or that is held, is a field as well.
 */
export class NumberField extends Piece {
  static override properties = {
    ...Piece.properties,
    cell: { attribute: false },
    name: {},
    plain: { type: Boolean },
    typed: { state: true },
    refusal: { state: true },
    mover: { state: true },
  };
  declare cell: Cell;
  /** Tells several fields of one cell apart. */
  declare name: string;
  /** Without tolerance and remarks: one of the few in the opening. */
  declare plain: boolean;
  /** What is in the box while someone is in it; null when the value speaks for itself. */
  declare typed: string | null;
  /** Why a derived cell could not be moved there. */
  declare refusal: string | null;
  declare mover: number;
  private readonly gesture = new Gesture();

  constructor() {
    super();
    this.name = 'field';
    this.plain = false;
    this.typed = null;
    this.refusal = null;
    this.mover = 0;
  }

  protected override watched(): readonly Cell[] {
    return [this.cell];
  }
  /** Nothing typed here outlives a change from elsewhere: undo, another notebook, a drag in a figure. */
  protected override willUpdate(changed?: PropertyValues): void {
    super.willUpdate();
    if (changed?.has('cell')) this.typed = null;
    const focused = this.isConnected && this.querySelector('.num') === document.activeElement;
    if (!focused && this.cell.role === 'input' && this.store.draftFault(this.cell) === undefined) this.typed = null;
  }

  private get value(): number | undefined {
    const value = lastGood(this.store.state(this.cell));
    return typeof value === 'number' ? value : undefined;
  }
  private get fault(): string | null {
    if (this.refusal) return this.refusal;
    if (this.cell.role === 'input' && this.store.draftFault(this.cell)) return this.store.draftFault(this.cell)!;
    const state = this.store.state(this.cell);
    return state.is === 'fault' && state.fault.about === this.cell.id
      ? say(state.fault.message, this.store.system)
      : this.store.faultAbout(this.cell);
  }
  /** Steps and slides are counted in the unit shown, on its grid. */
  private get grid(): { low: number; high: number; step: number } | null {
    const range: Range | undefined = this.cell.slider;
    if (!range) return null;
    const { unit, step, digits } = shownOf(this.store, this.cell);
    const round = (si: number): number => Number(toUnit(si, unit).toFixed(digits));
    return { low: round(range[0]), high: round(range[1]), step };
  }

  /** A computed figure that nothing moves: what is typed into it is held, as measured. */
  private get isFree(): boolean {
    const { cell, store } = this;
    return cell.role !== 'input' && cell.movedBy.length === 0 && !store.live.isHeld(cell);
  }
  private write(si: number, gesture: unknown): void {
    const { cell, store } = this;
    try {
      const what =
        `Set ${lower(cell.label)} to ${figureOf(store, cell, si)} ${shownOf(store, cell).unit.symbol}`.trim();
      const edit = { what, place: cell.id, gesture };
      if (this.isFree) store.hold(cell, tidy(si), edit);
      else store.put(cell, tidy(si), edit, this.mover);
      this.refusal = null;
    } catch (error) {
      if (!(error instanceof Impossible)) throw error;
      this.refusal = say(error.phrase, store.system);
    }
  }
  private type(text: string): void {
    this.typed = text;
    const { cell, store } = this;
    const input = cell.role === 'input' ? cell : null;
    if (cell.kind.name === 'optional' && /^\s*$/.test(text)) {
      if (input)
        store.set([[input, null]], { what: `Cleared ${lower(cell.label)}`, place: cell.id, gesture: this.gesture.now });
      return;
    }
    const got = read(text, quantityOf(cell)!, shownOf(store, cell));
    const range = input && 'si' in got ? outOfRange(input, got.si) : null;
    const sentence = 'fault' in got ? got.fault : range ? say(range.message, store.systemOf(cell)) : null;
    if (sentence === null) return this.write((got as { si: number }).si, this.gesture.now);
    if (input) store.draft(input, sentence);
    else this.refusal = sentence;
  }
  private leave(): void {
    this.gesture.end();
    // What could be read is shown in its own digits; what could not stays, with its sentence, until it is mended.
    if (this.fault === null) this.typed = null;
  }
  private giveUp(): void {
    this.typed = null;
    this.refusal = null;
    if (this.cell.role === 'input') this.store.draft(this.cell, null);
  }
  private key(event: KeyboardEvent, slide: boolean): void {
    const turn = {
      ArrowUp: 1,
      ArrowRight: slide ? 1 : 0,
      ArrowDown: -1,
      ArrowLeft: slide ? -1 : 0,
      PageUp: 10,
      PageDown: -10,
    }[event.key];
    if (event.key === 'Escape') return this.giveUp();
    if (event.key === 'Enter') return this.leave();
    if (!turn || this.value === undefined) return;
    event.preventDefault();
    this.typed = null;
    const { unit, step } = shownOf(this.store, this.cell);
    const now = toUnit(this.value, unit);
    const by = turn * (event.shiftKey ? 10 : 1);
    // To the next mark of the grid, so that odd figures come back onto it.
    const next = by > 0 ? Math.floor(now / step + 1e-6) + by : Math.ceil(now / step - 1e-6) + by;
    this.write(this.held(fromUnit(next * step, unit)), this.gesture.key);
  }
  private held(si: number): number {
    const [low, high] = (this.cell.role === 'input' ? this.cell.hard : undefined) ?? [-Infinity, Infinity];
    return Math.min(high, Math.max(low, si));
  }
  private slide(text: string): void {
    this.typed = null;
    this.write(fromUnit(Number(text), shownOf(this.store, this.cell).unit), this.gesture.now ?? this.gesture.key);
  }

  protected override render(): TemplateResult {
    const { cell, store, fault } = this;
    const id = `${this.name}-${cell.id}`;
    const value = this.value;
    const state = store.state(cell);
    const text = this.typed ?? (value === undefined || present(state) === null ? '' : figureOf(store, cell, value));
    const held = cell.role !== 'input' && store.live.isHeld(cell);
    const changed = (cell.role === 'input' || held) && store.isChanged(cell);
    const outside =
      cell.role === 'input' && cell.trust && value !== undefined && (value < cell.trust[0] || value > cell.trust[1]);
    return html`<div
      class="field ${fault ? 'bad' : ''} ${held ? 'held' : ''} ${changed ? 'changed' : ''} ${outside ? 'out' : ''}"
      id=${this.plain ? nothing : cell.id}
    >
      <span
        ><label for=${id}>${cell.label}</label>${when(
          changed && !this.plain,
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
      <input
        class="num"
        id=${id}
        inputmode="decimal"
        autocomplete="off"
        spellcheck="false"
        .value=${live(text)}
        placeholder=${text === '' ? '–' : nothing}
        aria-invalid=${fault ? 'true' : 'false'}
        aria-describedby=${fault ? `${id}-fault` : nothing}
        @focus=${() => this.gesture.begin()}
        @blur=${() => this.leave()}
        @keydown=${(e: KeyboardEvent) => this.key(e, false)}
        @input=${(e: InputEvent) => this.type((e.target as HTMLInputElement).value)}
      />
      <span class="unit">${unitOf(store, cell)}</span>
      ${fault || value === undefined ? nothing : this.slider(value)}
      ${this.plain || fault || value === undefined ? nothing : html`<tolerance-button class="tol" .store=${store} .cell=${cell}></tolerance-button>`}
      ${when(fault, () => html`<p class="fault" id="${id}-fault" role="alert">${fault}</p>`)}
      ${this.plain ? this.movedNote() : html`<field-notes .store=${store} .cell=${cell}></field-notes>${this.movedNote()}`}
    </div>`;
  }

  private slider(value: number): TemplateResult | typeof nothing {
    const { cell, store, grid } = this;
    if (!grid) return nothing;
    const { unit } = shownOf(store, cell);
    const now = toUnit(value, unit);
    const part = (shown: number): number => (shown - grid.low) / (grid.high - grid.low);
    const clamp = (p: number): number => Math.min(1, Math.max(0, p));
    const trust = cell.role === 'input' ? cell.trust : undefined;
    const [low, high] = trust ? [clamp(part(toUnit(trust[0], unit))), clamp(part(toUnit(trust[1], unit)))] : [0, 1];
    const start = store.startValue(cell);
    const was = typeof start === 'number' ? part(toUnit(start, unit)) : -1;
    return html`<input
      class="slide"
      type="range"
      aria-label="${cell.label}, slider"
      min=${grid.low}
      max=${grid.high}
      step=${grid.step}
      .value=${live(String(now))}
      aria-valuetext=${spoken(store, cell, value)}
      style="--lo:${low};--hi:${high};--was:${was >= 0 && was <= 1 ? was : -1}"
      @pointerdown=${() => this.gesture.begin()}
      @pointerup=${() => this.gesture.end()}
      @pointercancel=${() => this.gesture.end()}
      @keydown=${(e: KeyboardEvent) => this.key(e, true)}
      @input=${(e: InputEvent) => this.slide((e.target as HTMLInputElement).value)}
    />`;
  }

  /** A derived value says what moves when it is moved, and offers the other way. */
  private movedNote(): TemplateResult | typeof nothing {
    const { cell, store } = this;
    if (cell.role === 'input' || store.live.isHeld(cell) || cell.movedBy.length === 0) return nothing;
    const by = cell.movedBy[this.mover]!;
    const [input] = by.inputs;
    const at = input ? lastGood(store.state(input)) : undefined;
    const other = (this.mover + 1) % cell.movedBy.length;
    const now = typeof at === 'number' && input ? `, now at ${figureOf(store, input, at)}°` : '';
    return html`<small class="moved"
      >Moves ${by.label}${now}.
      ${when(
        cell.movedBy.length > 1,
        () =>
          html`<button class="link" @click=${() => (this.mover = other)}>
            ${cell.movedBy[other]!.label} instead
          </button>`,
      )}</small
    >`;
  }
}
customElements.define('number-field', NumberField);
declare global {
  interface HTMLElementTagNameMap {
    'number-field': NumberField;
  }
}
