import { html, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import { say } from '../units/phrase.ts';
import { sentence, type Verdict, type VerdictKind } from '../graph/kind.ts';
import { lastGood } from '../graph/state.ts';
import { Piece } from './piece.ts';
import { lower } from './words.ts';

/** <verdict-note>: the fuel's verdict here, and taken down, each in one sentence with its flag. */
export class VerdictNote extends Piece {
  static override properties = { ...Piece.properties, here: { attribute: false }, low: { attribute: false } };
  declare here: Cell<Verdict>;
  declare low: Cell<Verdict>;

  protected override watched(): readonly Cell[] {
    return [this.here, this.low];
  }
  protected override render(): TemplateResult {
    const now = lastGood(this.store.state(this.here));
    const stale = this.store.state(this.here).is === 'fault';
    return html`<div class="verdict ${stale ? 'stale' : ''}" id="verdict" aria-live="polite">
      <span class="flag is-${now ? this.tone(this.here, now) : 'comfortable'}"></span>
      <div>
        ${stale ? this.waits() : ''}
        <p>${this.said(this.here)}</p>
        <p class="low">${this.said(this.low)}</p>
      </div>
    </div>`;
  }
  private tone(cell: Cell<Verdict>, v: Verdict): string {
    return (cell.kind as unknown as VerdictKind).words.find((w) => w.id === v.word)!.tone;
  }
  private said(cell: Cell<Verdict>): TemplateResult | string {
    const { store } = this;
    const v = lastGood(store.state(cell));
    if (!v) return '…';
    const [word, ...rest] = sentence(cell.kind as unknown as VerdictKind, v, store.spread(cell)?.plusMinus);
    return html`<span class="word is-${this.tone(cell, v)}">${word}</span>${say(rest, store.system)}`;
  }
  private waits(): TemplateResult | string {
    const state = this.store.state(this.here);
    if (state.is !== 'fault') return '';
    const at = this.store.catalogue.cells.get(state.fault.about);
    return html`<p class="stale-note">
      Waits for <a href="#${state.fault.about}">${at ? lower(at.label) : 'a figure'}</a>. This is the last good verdict.
    </p>`;
  }
}
customElements.define('verdict-note', VerdictNote);
declare global {
  interface HTMLElementTagNameMap {
    'verdict-note': VerdictNote;
  }
}
