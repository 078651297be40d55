import { html, nothing, type TemplateResult } from 'lit';
import { read as readFigure } from '../formula/read.ts';
import type { Cell } from '../graph/cell.ts';
import type { SweepItem } from '../notebook/document.ts';
import { results, variables } from '../notebook/sweeps.ts';
import { figure } from '../units/format.ts';
import { Piece } from './piece.ts';
import { blank, cellList, rangeOf, unitWord, whileFixed } from './sentence.ts';
import { figureOf, quantityOf, shownOf, when } from './words.ts';

/** <sweep-sentence>: "Show … against … from … to …, one line for each …": every blue word can be changed in place. */
export class SweepSentence extends Piece {
  static override properties = { ...Piece.properties, item: { attribute: false }, fault: { state: true } };
  declare item: SweepItem;
  declare fault: string | null;

  constructor() {
    super();
    this.fault = null;
  }
  private change(recipe: (item: SweepItem) => SweepItem | null): void {
    const { store } = this;
    const next = recipe(this.item);
    if (!next) return;
    this.fault = null;
    store.change({ what: 'Changed a sweep', place: this.item.id }, (draft) => {
      const i = draft.page.findIndex((p) => p.id === next.id);
      if (i >= 0) draft.page[i] = next as (typeof draft.page)[number];
    });
  }
  private get cells(): { read: Cell; vary: Cell; family: Cell | null } {
    const { cells } = this.store.catalogue;
    const { item } = this;
    return {
      read: cells.get(item.read)!,
      vary: cells.get(item.vary)!,
      family: item.family ? cells.get(item.family.vary)! : null,
    };
  }

  private setRead(id: string): void {
    this.change((item) => {
      const read = this.store.catalogue.cells.get(id)!;
      const free = variables(this.store, read);
      const vary = free.find((c) => c.id === item.vary) ?? free[0];
      if (!vary) return null;
      const keep = vary.id === item.vary ? item : { ...item, ...rangeOf(this.store, vary), vary: vary.id };
      const { family, ...rest } = keep;
      return family && free.some((c) => c.id === family.vary) && family.vary !== vary.id
        ? { ...rest, family, read: id }
        : { ...rest, read: id };
    });
  }
  private setVary(id: string): void {
    this.change((item) => {
      const vary = this.store.catalogue.cells.get(id)!;
      const { family, ...rest } = item;
      return { ...rest, vary: id, ...rangeOf(this.store, vary), ...(family && family.vary !== id ? { family } : {}) };
    });
  }
  private setEnd(which: 'from' | 'to', text: string): void {
    const { vary } = this.cells;
    const got = readFigure(text, quantityOf(vary)!, shownOf(this.store, vary));
    if ('fault' in got) this.fault = got.fault;
    else if (got.si === this.item[which === 'from' ? 'to' : 'from']) this.fault = 'The two ends of a sweep differ.';
    else this.change((item) => ({ ...item, [which]: got.si }));
  }
  private setFamily(id: string): void {
    const vary = this.store.catalogue.cells.get(id);
    this.change(({ family, ...item }) =>
      vary ? { ...item, family: { vary: id, values: membersOf(this.store, vary) } } : family ? item : null,
    );
  }
  private setMembers(text: string): void {
    const { family } = this.cells;
    if (!family) return;
    const values: number[] = [];
    // A comma parts members only before a space, since it may be a decimal mark.
    for (const part of text.split(/;|,\s+|\s+(?=[\d.+−-])/).filter((p) => p.trim() !== '')) {
      const got = readFigure(part, quantityOf(family)!, shownOf(this.store, family));
      if ('fault' in got) return void (this.fault = `${part.trim()}: ${got.fault}`);
      values.push(got.si);
    }
    if (values.length === 0 || values.length > 12) return void (this.fault = 'Give one to twelve values.');
    this.change((item) => ({ ...item, family: { vary: family.id, values } }));
  }

  protected override render(): TemplateResult {
    const { item, store } = this;
    const { read, vary, family } = this.cells;
    const end = (which: 'from' | 'to'): TemplateResult =>
      blank(`Sweep ${which}`, figureOf(store, vary, item[which]), (text) => this.setEnd(which, text));
    const list = (name: string, cells: readonly Cell[], now: string, set: (id: string) => void): TemplateResult =>
      cellList(store, { name, cells, now, set });
    return html`<p class="sentence">
        Show ${list('What is shown', results(store.catalogue), read.id, (id) => this.setRead(id))} against
        ${list('Against what', variables(store, read), vary.id, (id) => this.setVary(id))} from ${end('from')} to
        ${end('to')} ${unitWord(store, vary)}, ${family ? 'one line for each' : ''}
        ${cellList(store, {
          name: 'One line for each',
          cells: variables(store, read).filter((c) => c !== vary),
          now: family?.id ?? '',
          set: (id) => this.setFamily(id),
          none: 'one line',
        })}${when(
          family && quantityOf(family),
          () =>
            html` of
            ${blank(`Values of ${family!.label}`, item.family!.values.map((v) => figureOf(store, family!, v as number)).join(', '), (text) => this.setMembers(text), true)}
            ${shownOf(store, family!).unit.symbol}`,
        )}${whileFixed(store, item.fixed)}.
      </p>
      ${this.fault ? html`<p class="fault" role="alert">${this.fault}</p>` : nothing}`;
  }
}

/** Three members to begin with: the present value and one on either side, on the shown grid. */
function membersOf(store: Piece['store'], cell: Cell): number[] {
  const { from, to } = rangeOf(store, cell);
  const state = store.state(cell);
  const now = state.is === 'ready' && typeof state.value === 'number' ? state.value : (from + to) / 2;
  const by = (to - from) / 10;
  const { unit, digits } = shownOf(store, cell);
  const round = (si: number): number => {
    const text = figure(si, { unit, digits, step: 1 }).replace('−', '-');
    return Number(text) * unit.factor + unit.offset;
  };
  return [...new Set([round(now - by), round(now), round(now + by)])];
}
customElements.define('sweep-sentence', SweepSentence);
declare global {
  interface HTMLElementTagNameMap {
    'sweep-sentence': SweepSentence;
  }
}
