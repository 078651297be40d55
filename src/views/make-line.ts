import { html, nothing, type TemplateResult } from 'lit';
import { read } from '../formula/read.ts';
import type { Cell } from '../graph/cell.ts';
import type { Search } from '../graph/chapter.ts';
import { NotSettled } from '../graph/snapshot.ts';
import { solve, type Solution } from '../graph/solve.ts';
import { Impossible, lastGood } from '../graph/state.ts';
import { cautionsTurnedOn } from '../notebook/cautions.ts';
import { variables } from '../notebook/sweeps.ts';
import { say } from '../units/phrase.ts';
import { tidy } from '../units/unit.ts';
import { Piece } from './piece.ts';
import { isSlowWay, Seeker } from './seeker.ts';
import { figureOf, lower, quantityOf, shownOf, unitOf, withUnit } from './words.ts';

/**
 * <make-line>: "Make it … by changing …": finds the setting, says what else it switches on, and sets it. What takes
 * long is looked for elsewhere, once a target was typed.
 */
export class MakeLine extends Piece {
  static override properties = {
    ...Piece.properties,
    cell: { attribute: false },
    target: { state: true },
    by: { state: true },
    fault: { state: true },
  };
  declare cell: Cell;
  declare target: number | null;
  declare by: string;
  declare fault: string | null;
  private readonly seeker = new Seeker(this);

  constructor() {
    super();
    this.target = null;
    this.by = '';
    this.fault = null;
  }
  protected override watched(): readonly Cell[] {
    return [this.cell];
  }
  /** What can be changed: inputs and held values it stands on, and what a hand can move. */
  private get choices(): readonly Cell[] {
    const { store } = this;
    return variables(store, this.cell).filter(
      (c) =>
        (c.role === 'input' && typeof lastGood(store.state(c)) === 'number') ||
        (c.role !== 'input' && (store.live.isHeld(c) || c.movedBy.length > 0)),
    );
  }
  private aim(text: string): void {
    const { cell, store } = this;
    const got = read(text, quantityOf(cell)!, shownOf(store, cell));
    this.fault = 'fault' in got ? got.fault : null;
    this.target = 'fault' in got ? null : got.si;
  }

  protected override render(): TemplateResult {
    const { cell, store } = this;
    const { choices } = this;
    const value = lastGood(store.state(cell));
    // At first what a hand moves on the page, else what was measured, whatever the order of the cells.
    const derived = choices.filter((c) => c.role !== 'input');
    const usual = derived.find((c) => c.movedBy.length > 0) ?? derived[0] ?? choices[0];
    const vary = choices.find((c) => c.id === this.by) ?? usual;
    if (!vary || typeof value !== 'number') return html``;
    const shown = this.target === null ? figureOf(store, cell, value) : figureOf(store, cell, this.target);
    return html`<div class="make">
      Make it
      <input
        class="blank"
        inputmode="decimal"
        aria-label="Make ${lower(cell.label)}"
        .value=${shown}
        @change=${(e: Event) => this.aim((e.target as HTMLInputElement).value)}
      />
      by changing
      <select
        class="blank"
        aria-label="By changing"
        @change=${(e: Event) => (this.by = (e.target as HTMLSelectElement).value)}
      >
        ${choices.map((c) => html`<option value=${c.id} ?selected=${c === vary}>${lower(c.label)}</option>`)}</select
      >${this.fault ? html`. <span class="fault" role="alert">${this.fault}</span>` : this.target === null ? '.' : this.answer(vary, this.target)}
    </div>`;
  }
  private answer(vary: Cell, target: number): TemplateResult | string {
    const { cell, store } = this;
    const range = vary.role === 'input' ? (vary.slider ?? vary.hard) : vary.slider;
    if (!range) return '. Nothing says how far that may go.';
    const search = { vary, read: cell, target, range } as Search;
    try {
      if (isSlowWay(store, search)) return this.slowAnswer(search);
      return this.found(vary, solve(store.snapshot(), cell, target, vary, range));
    } catch (error) {
      if (error instanceof NotSettled || error instanceof Impossible)
        return '. It waits for something that has no value.';
      throw error;
    }
  }
  private slowAnswer(search: Search): TemplateResult | string {
    const { seeker, store } = this;
    const news = seeker.of(search);
    if (!news)
      return html`. <button class="button" @click=${() => seeker.seek(search)}>Look for it</button>
        <small>It takes some seconds, on a quicker, coarser grid.</small>`;
    if (news.is === 'fault') return html`. <span role="alert">${say(news.message, store.system)}</span>`;
    if (news.is === 'ready')
      return html`${this.found(search.vary, news.solution)}
        <small role="status">Found on a quicker, coarser grid: the figure itself may come out a little off.</small>`;
    const percent = Math.round(news.done * 100);
    return html`.
      <div class="bar" style="--done:${percent}%"></div>
      <small>Looking for it: ${percent} %. <button class="link" @click=${() => seeker.stop()}>stop</button></small>`;
  }
  private found(vary: Cell, { values, nearest }: Solution): TemplateResult | string {
    const { cell, store } = this;
    if (values.length > 0) return html`: ${values.map((v) => this.offer(vary, v))}`;
    return nearest
      ? html`: out of reach. The nearest is ${figureOf(store, cell, nearest.gives)}, at
        ${figureOf(store, vary, nearest.at)} ${unitOf(store, vary)}.`
      : '. There is no answer in reach.';
  }
  private offer(vary: Cell, value: number): TemplateResult {
    const { store } = this;
    const whole = withUnit(store, vary, value);
    const cautions = cautionsTurnedOn(store.snapshot(), store.catalogue, vary, value);
    const set = (): void =>
      store.put(vary, tidy(value), { what: `Set ${lower(vary.label)} to ${whole}`, place: vary.id, announce: true });
    return html`<span class="offer"
        >${whole}.
        ${cautions.length === 0 ? 'It turns on no caution.' : html`It turns on: ${cautions.map((c) => say(c, store.system)).join(' ')}`}
        <button class="button" @click=${set}>Set ${whole}</button></span
      >
      ${nothing}`;
  }
}
customElements.define('make-line', MakeLine);
declare global {
  interface HTMLElementTagNameMap {
    'make-line': MakeLine;
  }
}
