import { html, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Cell } from '../graph/cell.ts';
import { actionsOf, type Chapter } from '../graph/chapter.ts';
import { lastGood } from '../graph/state.ts';
import type { FigureItem } from '../notebook/document.ts';
import { say } from '../units/phrase.ts';
import { type AddItem, type Addable, addables } from './add-items.ts';
import { curvesOf, drawnOf } from './chapter-figures.ts';
import { actionList, answerList, choicesOf, fieldList } from './field-list.ts';
import { itemFigure } from './item-figure.ts';
import { Near } from './near.ts';
import { Piece } from './piece.ts';
import { Rest } from './rest.ts';
import { when } from './words.ts';
import './chapter-group.ts';

/** <chapter-section>: fields and answers on one side, figures on the other; closed, one line that says what it comes to. */
export class ChapterSection extends Piece {
  static override properties = {
    ...Piece.properties,
    chapter: { attribute: false },
    items: { attribute: false },
    open: { type: Boolean },
    firstFigure: { type: Number },
  };
  declare chapter: Chapter;
  /** The figures that were added to it. */
  declare items: readonly FigureItem[];
  declare open: boolean;
  /** The number of its first figure. */
  declare firstFigure: number;

  /** What a closed chapter says is asked for only where it is read, and if it is long work only once hands rest. */
  private readonly near = new Near(this, () => !this.open && this.requestUpdate());
  private readonly rest = new Rest(this);
  private get asks(): boolean {
    return this.near.isNear && (this.rest.isAtRest || this.store.live.isQuick(this.chapter.says));
  }
  protected override watched(): readonly Cell[] {
    if (this.open) return choicesOf(this.chapter.fields);
    return this.asks ? [this.chapter.says] : [];
  }
  private turn(): void {
    this.dispatchEvent(new CustomEvent('turn', { detail: this.chapter.id, bubbles: true }));
  }

  protected override render(): TemplateResult {
    return this.open ? this.whole() : this.folded();
  }
  private folded(): TemplateResult {
    const { chapter, store } = this;
    const said = lastGood((this.asks ? store : store.live).state(chapter.says));
    return html`<section class="folded">
      <h2 id="chapter-${chapter.id}">
        <button aria-expanded="false" @click=${() => this.turn()}>
          <span class="n">${chapter.number}</span>${chapter.title} <em>open</em>
        </button>
      </h2>
      <p>${said ? say(said, store.system) : chapter.sentence}</p>
    </section>`;
  }
  private whole(): TemplateResult {
    const { chapter, store, items } = this;
    const heading = `chapter-${chapter.id}`;
    return html`<section class="chapter split" aria-labelledby=${heading}>
      <div class="col">
        <div class="head">
          <h2 id=${heading}><span class="n">${chapter.number}</span>${chapter.title}</h2>
          <variant-mark .store=${store}></variant-mark>
          <button class="why shut" aria-expanded="true" aria-label="Close ${chapter.title}" @click=${() => this.turn()}>
            close
          </button>
        </div>
        <p>${chapter.sentence}</p>
        ${fieldList(store, chapter.fields)}
      </div>
      <div class="figs ${items.length > 0 ? 'tall' : ''}">${this.figures()}</div>
      <div class="col answers">
        <h3>What follows</h3>
        ${answerList(store, chapter.answers)} ${actionList(store, actionsOf(chapter))}
        ${chapter.groups?.map(
          (group) =>
            html`<chapter-group .store=${store} .group=${group} .actions=${actionsOf(chapter, group)}></chapter-group>`,
        )}
        ${when(chapter.caution, () => html`<p class="aside">${chapter.caution}</p>`)}
        <p class="add">Add ${addables.map((a, i) => [joint(i), this.adder(a)])} here.</p>
      </div>
    </section>`;
  }
  private figures(): TemplateResult {
    const { chapter, store, items, firstFigure } = this;
    const drawn = drawnOf(store, chapter);
    if (drawn.some((f) => f.compares)) void import('./compare-figure.ts');
    const curves = curvesOf(chapter);
    return html`${repeat(
      items,
      (item) => item.id,
      (item, i) => itemFigure({ item, store, number: firstFigure + i }),
    )}
    ${drawn.map((f, i) => {
      const number = firstFigure + items.length + i;
      return f.compares
        ? html`<compare-figure .store=${store} .figure=${f} .number=${number}></compare-figure>`
        : html`<drawn-figure .store=${store} .figure=${f} .number=${number}></drawn-figure>`;
    })}
    ${curves.map((c, i) => html`<curve-figure .store=${store} .cell=${c} .number=${firstFigure + items.length + drawn.length + i}></curve-figure>`)}`;
  }
  private adder(add: Addable): TemplateResult {
    const detail: AddItem = { chapter: this.chapter.id, add };
    const ask = (): unknown => this.dispatchEvent(new CustomEvent('add-item', { detail, bubbles: true }));
    return html`<button class="link" aria-label="Add ${add.name} here" @click=${ask}>${add.name}</button>`;
  }
}

const joint = (i: number): string => (i === 0 ? '' : i === addables.length - 1 ? ' or ' : ', ');
customElements.define('chapter-section', ChapterSection);
declare global {
  interface HTMLElementTagNameMap {
    'chapter-section': ChapterSection;
  }
}
