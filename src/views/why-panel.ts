import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import { lastGood } from '../graph/state.ts';
import { errorWorkOf, leftOpen } from './model-error.ts';
import { Piece } from './piece.ts';
import './make-line.ts';
import { drawIt } from './draw-it.ts';
import { shareBars } from './share-bars.ts';
import { figureOf, lower, quantityOf, shortOf, unitOf } from './words.ts';

/** <why-panel>: how an answer comes about: words, formula, what it reads, where from, how far to trust it. */
export class WhyPanel extends Piece {
  static override properties = { ...Piece.properties, cell: { attribute: false } };
  declare cell: Exclude<Cell, { role: 'input' }>;

  private get reads(): readonly Cell[] {
    return Object.values(this.cell.from).filter((c) => c.kind.name !== 'record');
  }
  protected override watched(): readonly Cell[] {
    return [this.cell, ...errorWorkOf(this.store, this.cell), ...Object.values(this.cell.from)];
  }
  protected override render(): TemplateResult {
    const { cell, store } = this;
    const value = lastGood(store.state(cell));
    const answer =
      typeof value === 'number'
        ? html`<span>=</span><b>${figureOf(store, cell, value)}</b> ${unitOf(store, cell)}`
        : nothing;
    return html`<div class="why-panel">
      <p class="words">${cell.note}</p>
      <p class="formula">${this.written((c) => lower(shortOf(c)))}</p>
      <p class="formula"><span>=</span> ${this.written((c) => this.figure(c))} ${answer}</p>
      <dl>
        <dt>It reads</dt>
        <dd>
          <ul class="reads">
            ${this.reads.map((c) => html`<li><a href="#${c.id}" class=${c.role === 'input' ? 'yours' : ''}>${c.label}</a><b class=${c.role === 'input' ? 'yours' : ''}>${this.figure(c)}</b><span class="unit">${quantityOf(c) ? unitOf(store, c) : ''}</span></li>`)}
          </ul>
        </dd>
        <dt>Where it comes from</dt>
        <dd>
          ${cell.source.in ? html`${cell.source.in.text}: ${cell.source.at}.` : html`Common practice, no source: ${cell.source.at}.`}
        </dd>
        ${this.trust()} ${this.bars()} ${leftOpen(store, cell)}
      </dl>
      ${cell.kind.name === 'scalar' ? html`<make-line .store=${store} .cell=${cell}></make-line>` : nothing}
      ${drawIt(store, cell)} ${this.holding(value)}
    </div>`;
  }
  /** The formula with each name it reads replaced. */
  private written(by: (c: Cell) => string): string {
    return this.cell.formula.replace(/[a-zA-Z][a-zA-Z0-9]*/g, (word) =>
      Object.hasOwn(this.cell.from, word) ? by(this.cell.from[word]!) : word,
    );
  }
  private figure(c: Cell): string {
    const value = lastGood(this.store.state(c));
    if (value === undefined) return '…';
    if (typeof value === 'number') return figureOf(this.store, c, value);
    return c.kind.text(value, this.store.systemOf(c));
  }
  private trust(): TemplateResult | typeof nothing {
    const { cell, store } = this;
    const ranges = Object.entries(cell.valid).map(([name, range]) => [cell.from[name]!, range] as const);
    const own = cell.validValue ? ([[cell, cell.validValue]] as const) : [];
    if (ranges.length + own.length === 0) return nothing;
    return html`<dt>How far to trust it</dt>
      <dd>
        ${[...ranges, ...own].map(([c, [low, high]]) => html`${c.label} from ${figureOf(store, c, low)} to ${figureOf(store, c, high)} ${unitOf(store, c)}. `)}
      </dd>`;
  }
  private bars(): TemplateResult | typeof nothing {
    const { cell, store } = this;
    const spread = cell.kind.name === 'scalar' ? store.spread(cell) : null;
    if (!spread || spread.shares.length === 0) return nothing;
    return html`<dt>What moves it most</dt>
      <dd class="bars">${shareBars(store, cell, spread.shares, 6)}</dd>`;
  }
  private holding(value: unknown): TemplateResult | typeof nothing {
    const { cell, store } = this;
    if (cell.role !== 'cell' || cell.kind.name !== 'scalar' || typeof value !== 'number' || store.live.isHeld(cell))
      return nothing;
    return html`<p class="make">
      <button
        class="button"
        @click=${() => store.hold(cell, value, { what: `Held ${lower(cell.label)}`, place: cell.id, announce: true })}
      >
        Hold at ${figureOf(store, cell, value)}
      </button>
      <small>to enter it as measured.</small>
    </p>`;
  }
}
customElements.define('why-panel', WhyPanel);
declare global {
  interface HTMLElementTagNameMap {
    'why-panel': WhyPanel;
  }
}
