import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Cell, Input } from '../graph/cell.ts';
import type { Chapter, FieldWhen } from '../graph/chapter.ts';
import type { Explorer } from '../graph/explorer.ts';
import { lastGood } from '../graph/state.ts';
import type { SweepItem } from '../notebook/document.ts';
import { Piece } from './piece.ts';
import { when } from './words.ts';
import './choice-field.ts';
import './curve-figure.ts';
import './number-field.ts';
import './readout-row.ts';
import './sweep-figure.ts';

const isWhen = (field: Cell | FieldWhen): field is FieldWhen => 'field' in field;

/** <chapter-section>: fields and answers on one side, figures on the other. */
export class ChapterSection extends Piece {
  static override properties = {
    ...Piece.properties,
    chapter: { attribute: false },
    sweeps: { attribute: false },
    explorer: { attribute: false },
  };
  declare chapter: Chapter;
  declare sweeps: readonly SweepItem[];
  declare explorer: Explorer | null;

  private get choices(): readonly Input<string>[] {
    return [...new Set(this.chapter.fields.filter(isWhen).map((f) => f.when))];
  }
  protected override watched(): readonly Cell[] {
    return this.choices;
  }
  private get fields(): readonly Cell[] {
    return this.chapter.fields.flatMap((f) =>
      isWhen(f) ? (f.is.includes(String(lastGood(this.store.state(f.when)))) ? [f.field] : []) : [f],
    );
  }

  protected override render(): TemplateResult {
    const { chapter, store, sweeps } = this;
    const curves = chapter.answers.filter((c): c is Exclude<Cell, { role: 'input' }> => c.kind.name === 'curve');
    const rows = chapter.answers.filter(
      (c): c is Exclude<Cell, { role: 'input' }> => c.kind.name !== 'curve' || c.role === 'slow',
    );
    const heading = `chapter-${chapter.id}`;
    return html`<section class="chapter split" aria-labelledby=${heading}>
      <div class="col">
        <h2 id=${heading}><span class="n">${chapter.number}</span>${chapter.title}</h2>
        <p>${chapter.sentence}</p>
        ${repeat(
          this.fields,
          (c) => c.id,
          (c) =>
            c.kind.name === 'choice'
              ? html`<choice-field .store=${store} .cell=${c as Input<string>}></choice-field>`
              : html`<number-field .store=${store} .cell=${c}></number-field>`,
        )}
        <h3>What follows</h3>
        ${repeat(
          rows,
          (c) => c.id,
          (c) => html`<readout-row .store=${store} .cell=${c}></readout-row>`,
        )}
        ${when(chapter.caution, () => html`<p class="aside">${chapter.caution}</p>`)}
      </div>
      <div class="figs ${sweeps.length > 0 ? 'tall' : ''}">
        ${repeat(
          sweeps,
          (s) => s.id,
          (s) => html`<sweep-figure .store=${store} .item=${s} .explorer=${this.explorer}></sweep-figure>`,
        )}
        ${curves.map((c) => html`<curve-figure .store=${store} .cell=${c}></curve-figure>`)}
        ${sweeps.length + curves.length === 0 ? nothing : ''}
      </div>
    </section>`;
  }
}
customElements.define('chapter-section', ChapterSection);
declare global {
  interface HTMLElementTagNameMap {
    'chapter-section': ChapterSection;
  }
}
