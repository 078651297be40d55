import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import { type Action, fieldsOf, type Group } from '../graph/chapter.ts';
import { present } from '../graph/state.ts';
import { type Phrase, say } from '../units/phrase.ts';
import { actionList, answerList, choicesOf, fieldList } from './field-list.ts';
import { Piece } from './piece.ts';

/** <chapter-group>: part of a chapter under a title, folded until it is opened. A caution about a folded field is said all the same. */
export class ChapterGroup extends Piece {
  static override properties = {
    ...Piece.properties,
    group: { attribute: false },
    actions: { attribute: false },
    open: { state: true },
  };
  declare group: Group;
  declare actions: readonly Action[];
  declare open: boolean;

  constructor() {
    super();
    this.actions = [];
    this.open = false;
  }
  /** True if a cell is asked for or answered here. */
  holds(id: string): boolean {
    return [...fieldsOf(this.group), ...this.group.answers].some((cell) => cell.id === id);
  }
  async unfold(): Promise<void> {
    this.open = true;
    await this.updateComplete;
  }

  private get remarks(): readonly Cell[] {
    const fields = fieldsOf(this.group);
    return [...this.store.catalogue.cells.values()].filter(
      (c) => c.role !== 'input' && c.about !== undefined && fields.includes(c.about),
    );
  }
  protected override watched(): readonly Cell[] {
    return this.open ? choicesOf(this.group.fields) : this.remarks;
  }
  protected override render(): TemplateResult {
    const { group, store, open } = this;
    return html`<div class="group">
      <h4>
        <button class="fold" aria-expanded=${open} @click=${() => void (this.open = !open)}>
          ${group.title} <span aria-hidden="true">${open ? 'close' : 'open'}</span>
        </button>
      </h4>
      ${open ? html`${fieldList(store, group.fields)}${answerList(store, group.answers)}${actionList(store, this.actions)}` : this.cautions()}
    </div>`;
  }
  private cautions(): TemplateResult {
    return html`${this.remarks.map((remark) => {
      const said = present(this.store.state(remark)) as Phrase | null | undefined;
      return said ? html`<small class="remark" role="status">${say(said, this.store.system)}</small>` : nothing;
    })}`;
  }
}
customElements.define('chapter-group', ChapterGroup);
declare global {
  interface HTMLElementTagNameMap {
    'chapter-group': ChapterGroup;
  }
}
