import { html, type TemplateResult } from 'lit';
import type { Input } from '../graph/cell.ts';
import type { Choice } from '../graph/kind.ts';
import { lastGood } from '../graph/state.ts';
import { Piece } from './piece.ts';
import { lower } from './words.ts';
import './field-notes.ts';

/** <choice-field>: one of a few, as joined buttons. */
export class ChoiceField extends Piece {
  static override properties = { ...Piece.properties, cell: { attribute: false }, name: {}, plain: { type: Boolean } };
  declare cell: Input<string>;
  declare name: string;
  declare plain: boolean;

  constructor() {
    super();
    this.name = 'choice';
    this.plain = false;
  }
  protected override watched(): readonly Input[] {
    return [this.cell];
  }
  protected override render(): TemplateResult {
    const { cell, store } = this;
    const { options } = cell.kind as Choice;
    const now = lastGood(store.state(cell));
    const group = `${this.name}-${cell.id}`;
    const choose = (id: string, label: string): void =>
      store.set([[cell, id]], { what: `Set ${lower(cell.label)} to ${label}`, place: cell.id });
    return html`<fieldset class="choice" id=${this.plain ? group : cell.id}>
      <legend>${cell.label}</legend>
      <div class="opts">
        ${options.map(
          (o) =>
            html`<label
              ><input
                type="radio"
                name=${group}
                value=${o.id}
                .checked=${o.id === now}
                @change=${() => choose(o.id, o.label)}
              /><span>${o.label}</span></label
            >`,
        )}
      </div>
      ${this.plain ? '' : html`<field-notes .store=${store} .cell=${cell}></field-notes>`}
    </fieldset>`;
  }
}
customElements.define('choice-field', ChoiceField);
declare global {
  interface HTMLElementTagNameMap {
    'choice-field': ChoiceField;
  }
}
