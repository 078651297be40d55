import { html, nothing, type TemplateResult } from 'lit';
import { type DrawsItem, mostDraws, usualDraws } from '../notebook/document.ts';
import { results } from '../notebook/sweeps.ts';
import { Piece } from './piece.ts';
import { blank, cellList } from './sentence.ts';
import { grouped } from './words.ts';

/** <draws-sentence>: "How often … comes to what, if every ± holds": what is drawn, and how many times or how long. */
export class DrawsSentence extends Piece {
  static override properties = {
    ...Piece.properties,
    item: { attribute: false },
    slow: { type: Boolean },
    fault: { state: true },
  };
  declare item: DrawsItem;
  /** Each draw takes long: what is asked for is a time. */
  declare slow: boolean;
  declare fault: string | null;

  constructor() {
    super();
    this.slow = false;
    this.fault = null;
  }
  private change(more: Partial<DrawsItem>): void {
    const { item, store } = this;
    this.fault = null;
    store.change({ what: 'Changed the draws', place: item.id }, (draft) => {
      const i = draft.page.findIndex((p) => p.id === item.id);
      if (i >= 0) draft.page[i] = { ...item, ...more } as (typeof draft.page)[number];
    });
  }
  private write(which: 'count' | 'seconds', text: string): void {
    const [least, most] = mostDraws[which];
    const digits = text.replace(/[\s,’']/g, '');
    const number = /^\d{1,9}$/.test(digits) ? Number(digits) : NaN;
    if (number >= least && number <= most) this.change({ [which]: number });
    else
      this.fault = `Write ${which === 'count' ? 'how many times' : 'how many seconds'}: a whole number from ${grouped(least)} to ${grouped(most)}.`;
  }
  protected override render(): TemplateResult {
    const { item, store, slow } = this;
    const { catalogue } = store;
    const list = cellList(store, {
      name: 'What is drawn',
      cells: results(catalogue),
      now: item.read,
      set: (read) => this.change({ read }),
    });
    const much = slow
      ? html`for
        ${blank('Seconds of drawing', String(item.seconds ?? usualDraws.seconds), (text) => this.write('seconds', text))}
        seconds`
      : html`${blank('How many draws', grouped(item.count ?? usualDraws.count), (text) => this.write('count', text))}
        times`;
    return html`<p class="sentence">How often ${list} comes to what, if every ± holds, drawn ${much}.</p>
      ${this.fault ? html`<p class="fault" role="alert">${this.fault}</p>` : nothing}`;
  }
}
customElements.define('draws-sentence', DrawsSentence);
declare global {
  interface HTMLElementTagNameMap {
    'draws-sentence': DrawsSentence;
  }
}
