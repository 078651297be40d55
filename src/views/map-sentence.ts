import { html, nothing, type TemplateResult } from 'lit';
import { read as readFigure } from '../formula/read.ts';
import type { Cell } from '../graph/cell.ts';
import type { MapItem } from '../notebook/document.ts';
import { results, variables } from '../notebook/sweeps.ts';
import { Piece } from './piece.ts';
import { blank, cellList, rangeOf, unitWord, whileFixed } from './sentence.ts';
import { figureOf, quantityOf, shownOf } from './words.ts';

type Way = 'x' | 'y';
const names: { readonly [W in Way]: string } = { x: 'Across', y: 'Up' };

/** <map-sentence>: "Show … over … from … to … and … from … to …": every blue word can be changed in place. */
export class MapSentence extends Piece {
  static override properties = { ...Piece.properties, item: { attribute: false }, fault: { state: true } };
  declare item: MapItem;
  declare fault: string | null;

  constructor() {
    super();
    this.fault = null;
  }
  private change(next: MapItem): void {
    this.fault = null;
    this.store.change({ what: 'Changed a map', place: this.item.id }, (draft) => {
      const i = draft.page.findIndex((p) => p.id === next.id);
      if (i >= 0) draft.page[i] = next as (typeof draft.page)[number];
    });
  }
  private cell(id: string): Cell {
    return this.store.catalogue.cells.get(id)!;
  }

  private setRead(id: string): void {
    const { item } = this;
    const free = variables(this.store, this.cell(id));
    const taken: Cell[] = [];
    const kept = (way: Way): MapItem['x'] | undefined => {
      const cell =
        free.find((c) => c.id === item[way].vary) ?? free.find((c) => !taken.includes(c) && !this.isTaken(c));
      if (!cell) return undefined;
      taken.push(cell);
      return cell.id === item[way].vary ? item[way] : { vary: cell.id, ...rangeOf(this.store, cell) };
    };
    const [x, y] = [kept('x'), kept('y')];
    if (x && y) this.change({ ...item, read: id, x, y });
    else this.refuse('That stands on a single figure: a sweep shows it.');
  }
  private isTaken(cell: Cell): boolean {
    return [this.item.x.vary, this.item.y.vary].includes(cell.id);
  }
  private setVary(way: Way, id: string): void {
    const { item, store } = this;
    this.change({ ...item, [way]: { vary: id, ...rangeOf(store, this.cell(id)) } });
  }
  private setEnd(way: Way, which: 'from' | 'to', text: string): void {
    const { item, store } = this;
    const vary = this.cell(item[way].vary);
    const got = readFigure(text, quantityOf(vary)!, shownOf(store, vary));
    if ('fault' in got) this.refuse(got.fault);
    else if (got.si === item[way][which === 'from' ? 'to' : 'from']) this.refuse('The two ends of a map differ.');
    else this.change({ ...item, [way]: { ...item[way], [which]: got.si } });
  }
  /** Lists go back to what they said; what was typed stays beside its reason. */
  private refuse(why: string): void {
    this.fault = why;
    for (const list of this.querySelectorAll('select'))
      list.value = Array.from(list.options).find((o) => o.defaultSelected)?.value ?? '';
  }

  protected override render(): TemplateResult {
    const { item, store } = this;
    const read = this.cell(item.read);
    const free = variables(store, read);
    const axis = (way: Way): TemplateResult => {
      const vary = this.cell(item[way].vary);
      const other = item[way === 'x' ? 'y' : 'x'].vary;
      const list = cellList(store, {
        name: names[way],
        cells: free.filter((c) => c.id !== other),
        now: vary.id,
        set: (id) => this.setVary(way, id),
      });
      const end = (which: 'from' | 'to'): TemplateResult =>
        blank(`${names[way]} ${which}`, figureOf(store, vary, item[way][which]), (text) =>
          this.setEnd(way, which, text),
        );
      return html`${list} from ${end('from')} to ${end('to')} ${unitWord(store, vary)}`;
    };
    return html`<p class="sentence">
        Show
        ${cellList(store, { name: 'What is shown', cells: results(store.catalogue), now: read.id, set: (id) => this.setRead(id) })}
        over ${axis('x')} and ${axis('y')}${whileFixed(store, item.fixed)}.
      </p>
      ${this.fault ? html`<p class="fault" role="alert">${this.fault}</p>` : nothing}`;
  }
}
customElements.define('map-sentence', MapSentence);
declare global {
  interface HTMLElementTagNameMap {
    'map-sentence': MapSentence;
  }
}
