import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import { Impossible, type State } from '../graph/state.ts';
import { say } from '../units/phrase.ts';
import { DrawnFigure } from './drawn-figure.ts';
import { valuesOf } from './figure-values.ts';
import { type Standing, workBelow, workLine } from './work-line.ts';

/** <compare-figure>: a figure of two variants, the one that is looked at and another; worked out only while it can be seen. */
export class CompareFigure extends DrawnFigure {
  static override properties = { ...DrawnFigure.properties, against: { state: true } };
  /** The other one, by its id; else the first. */
  declare against: string;

  constructor() {
    super();
    this.against = '';
  }
  private get cells(): readonly Cell[] {
    return Object.values(this.figure.from);
  }
  /** The cells, and the work that is to be told of. */
  private looked(at: Standing): readonly Cell[] {
    return this.cells.flatMap((c) => [c, workBelow(at, c) ?? []].flat());
  }
  private get other() {
    const { others } = this.overlay;
    return others.find((v) => v.id === this.against) ?? others[0];
  }
  /** Where cells stand in the other one. */
  private get theirs(): Standing | null {
    const { other, store } = this;
    return other ? { state: (c) => store.others!.state(other.id, c) } : null;
  }
  protected override get overlaid(): readonly Cell[] {
    const { theirs } = this;
    return theirs ? this.looked(theirs) : [];
  }
  protected override get only(): string | undefined {
    return this.other?.id;
  }
  protected override watched(): readonly Cell[] {
    return this.overlay.isNear ? this.looked(this.store) : [];
  }
  protected override get states(): readonly State[] {
    const { theirs } = this;
    return [...super.states, ...(theirs ? this.cells.map((c) => theirs.state(c)) : [])];
  }
  protected override values(): object | null {
    const joined = this.joined();
    return joined instanceof Impossible ? null : joined;
  }
  private joined(): object | Impossible | null {
    const { store, figure, other, theirs } = this;
    const { self } = this.overlay;
    const first = valuesOf(figure.from, (c) => store.state(c));
    const second = theirs && valuesOf(figure.from, (c) => theirs.state(c));
    if (!self || !other || !first || !second) return null;
    try {
      return figure.compares!.join({ ...first, name: self.name } as never, { ...second, name: other.name } as never);
    } catch (error) {
      if (!(error instanceof Impossible)) throw error;
      return error;
    }
  }
  protected override head(): TemplateResult {
    const { others, self } = this.overlay;
    const { other } = this;
    const choices = html`<ul class="chips" aria-label="${self?.name ?? 'This'} against">
      ${others.map(
        (v) =>
          html`<li>
            <button aria-pressed=${v === other} @click=${() => void (this.against = v.id)}>${v.name}</button>
          </li>`,
      )}
    </ul>`;
    const why = this.joined();
    return html`${others.length > 1 ? choices : nothing}${this.work()}
    ${why instanceof Impossible ? html`<p class="stale-note">${say(why.phrase, this.store.system)}</p>` : nothing}`;
  }
  /** What is still being worked out: this one's first, then the other's. */
  private work(): TemplateResult | typeof nothing {
    const { store, other, theirs } = this;
    const waits = (at: Standing): Cell | undefined => this.cells.find((c) => workBelow(at, c) !== null);
    const mine = waits(store);
    const work = mine && workBelow(store, mine);
    if (work) return html`<div class="to-come">${workLine(store, work, store.state(work))}</div>`;
    const later = theirs && waits(theirs);
    const state = later && theirs.state(workBelow(theirs, later)!);
    if (!state || !('done' in state)) return nothing;
    const percent = Math.round(state.done * 100);
    return html`<div class="to-come">
      <div class="bar" style="--done:${percent}%"></div>
      <small>${other!.name}: ${percent} % done.</small>
    </div>`;
  }
}
customElements.define('compare-figure', CompareFigure);
declare global {
  interface HTMLElementTagNameMap {
    'compare-figure': CompareFigure;
  }
}
