import { html, nothing, type TemplateResult } from 'lit';
import { read } from '../formula/read.ts';
import type { Cell } from '../graph/cell.ts';
import type { Search } from '../graph/chapter.ts';
import { NotSettled } from '../graph/snapshot.ts';
import { solve, type Solution } from '../graph/solve.ts';
import { Impossible, lastGood } from '../graph/state.ts';
import { say } from '../units/phrase.ts';
import { choicesFor, choicesForBoth, othersOf, reachOf, usualOf, usualOther } from './make-choices.ts';
import { offerOf } from './make-offer.ts';
import './make-other.ts';
import { Piece } from './piece.ts';
import { isSlowWay, Seeker } from './seeker.ts';
import { figureOf, lower, quantityOf, shownOf, unitOf } from './words.ts';

/**
 * <make-line>: "Make it … by changing …": finds the setting, says what it does to the cautions, and sets it. What takes
 * long is looked for elsewhere, once a target was typed. "And another" wants a second result with it.
 */
export class MakeLine extends Piece {
  static override properties = {
    ...Piece.properties,
    cell: { attribute: false },
    target: { state: true },
    by: { state: true },
    other: { state: true },
    fault: { state: true },
  };
  declare cell: Cell;
  declare target: number | null;
  declare by: string;
  /** The id of the second result that is wanted; null while there is only the one. */
  declare other: string | null;
  declare fault: string | null;
  private readonly seeker = new Seeker(this);

  constructor() {
    super();
    this.target = null;
    this.by = '';
    this.other = null;
    this.fault = null;
  }
  protected override watched(): readonly Cell[] {
    return [this.cell];
  }
  private aim(text: string): void {
    const { cell, store } = this;
    const got = read(text, quantityOf(cell)!, shownOf(store, cell));
    this.fault = 'fault' in got ? got.fault : null;
    this.target = 'fault' in got ? null : got.si;
  }

  protected override render(): TemplateResult {
    const { cell, store } = this;
    const value = lastGood(store.state(cell));
    const others = this.other === null ? [] : othersOf(store, cell);
    const other = others.find((c) => c.id === this.other);
    const own = choicesFor(store, cell);
    const choices = other ? choicesForBoth(store, [cell, other]) : own;
    const vary = choices.find((c) => c.id === this.by) ?? usualOf(own);
    if (!vary || typeof value !== 'number') return html``;
    const target = this.target ?? value;
    return html`<div class="make">
      Make it
      <input
        class="blank"
        inputmode="decimal"
        aria-label="Make ${lower(cell.label)}"
        .value=${figureOf(store, cell, target)}
        @change=${(e: Event) => this.aim((e.target as HTMLInputElement).value)}
      />
      by changing
      <select
        class="blank"
        aria-label="By changing"
        @change=${(e: Event) => (this.by = (e.target as HTMLSelectElement).value)}
      >
        ${choices.map((c) => html`<option value=${c.id} ?selected=${c === vary}>${lower(c.label)}</option>`)}</select
      >${this.fault ? html`. <span class="fault" role="alert">${this.fault}</span>` : other ? nothing : this.target === null ? '.' : this.answer(vary, target)}
      ${other ? html`<make-other .store=${store} .first=${{ read: cell, target: this.target, vary }} .others=${others} .cell=${other} @another=${(e: CustomEvent<string>) => (this.other = e.detail)}></make-other>` : nothing}
      <button class="link" aria-expanded=${other !== undefined} @click=${() => this.turn()}>
        ${other ? 'only this one' : 'and another'}
      </button>
    </div>`;
  }
  /** Wants a second result as well, or no longer. */
  private async turn(): Promise<void> {
    const { cell, store } = this;
    this.other = this.other === null ? (usualOther(store, cell)?.id ?? null) : null;
    if (this.other === null) return;
    await this.updateComplete;
    const second = this.querySelector('make-other');
    await second?.updateComplete;
    second?.querySelector('select')?.focus();
  }
  private answer(vary: Cell, target: number): TemplateResult | string {
    const { cell, store } = this;
    const range = reachOf(vary);
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
    if (values.length > 0) return html`: ${values.map((value) => offerOf(store, [{ cell: vary, value }]))}`;
    return nearest
      ? html`: out of reach. The nearest is ${figureOf(store, cell, nearest.gives)}, at
        ${figureOf(store, vary, nearest.at)} ${unitOf(store, vary)}.`
      : '. There is no answer in reach.';
  }
}
customElements.define('make-line', MakeLine);
declare global {
  interface HTMLElementTagNameMap {
    'make-line': MakeLine;
  }
}
