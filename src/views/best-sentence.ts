import { html, nothing, type TemplateResult } from 'lit';
import { read as readFigure } from '../formula/read.ts';
import type { Cell } from '../graph/cell.ts';
import type { CurveKind } from '../graph/kind.ts';
import { lastGood } from '../graph/state.ts';
import { changeable } from '../notebook/bests.ts';
import { type BestAim, type BestItem, type BestLimit, mostOfBest } from '../notebook/document.ts';
import { results } from '../notebook/sweeps.ts';
import { figure } from '../units/format.ts';
import type { Quantity, Shown } from '../units/quantity.ts';
import { fromUnit, tidy, toUnit } from '../units/unit.ts';
import { glued, joint, optionList, wordsOf } from './best-choices.ts';
import { alongShown } from './best-words.ts';
import { Piece } from './piece.ts';
import { blank, cellList, rangeOf, unitWord } from './sentence.ts';
import { figureOf, lower, quantityOf, shownOf } from './words.ts';

/** <best-sentence>: "Most … by changing … from … to …, with … at worst …": every blue word can be changed in place. */
export class BestSentence extends Piece {
  static override properties = { ...Piece.properties, item: { attribute: false }, fault: { state: true } };
  declare item: BestItem;
  declare fault: string | null;

  constructor() {
    super();
    this.fault = null;
  }
  private change(more: Partial<BestItem>): void {
    const { item, store } = this;
    this.fault = null;
    store.change({ what: 'Changed what the best is', place: item.id }, (draft) => {
      const i = draft.page.findIndex((p) => p.id === item.id);
      if (i >= 0) draft.page[i] = { ...item, ...more } as (typeof draft.page)[number];
    });
  }
  private named(id: string): Cell {
    return this.store.catalogue.cells.get(id)!;
  }
  /** Reads a typed figure, or says what is wrong with it. */
  private read(text: string, quantity: Quantity, shown: Shown, then: (si: number) => void): void {
    const got = readFigure(text, quantity, shown);
    if ('fault' in got) this.fault = got.fault;
    else then(got.si);
  }

  // Aims
  private setAim(k: number, aim: BestAim | null): void {
    const { item, store } = this;
    const aims = item.aims.flatMap((a, i) => (i !== k ? [a] : aim ? [aim] : []));
    if (aim && k === item.aims.length) aims.push(aim);
    // What moves none of the aims is not offered to be changed.
    const free = changeable(
      store,
      aims.map((a) => this.named(a.read)),
    );
    const vary = item.vary.filter((v) => free.some((c) => c.id === v.id));
    const [first] = free;
    if (vary.length === 0 && first) vary.push({ id: first.id, ...rangeOf(store, first) });
    if (vary.length > 0) this.change({ aims, vary });
  }
  private aimOf(id: string, sense: BestAim['sense']): BestAim {
    const cell = this.named(id);
    if (cell.kind.name !== 'curve') return { sense, read: id };
    const known = this.item.aims.find((aim) => aim.from !== undefined);
    const { unit } = alongShown(this.store, cell);
    const [from, to] = [known?.from ?? tidy(fromUnit(2500, unit)), known?.to ?? tidy(fromUnit(5000, unit))];
    return { sense, read: id, from, to };
  }
  private aim(aim: BestAim, k: number): TemplateResult {
    const cell = this.named(aim.read);
    const number = k === 0 ? '' : 'Second aim: ';
    const others = this.item.aims.filter((_, i) => i !== k).map((a) => a.read);
    return html`${optionList(
      `${number}most or least`,
      [
        ['most', k === 0 ? 'Most' : 'most'],
        ['least', k === 0 ? 'Least' : 'least'],
      ],
      aim.sense,
      (sense) => this.setAim(k, { ...aim, sense: sense as BestAim['sense'] }),
    )}
    ${cellList(this.store, {
      name: `${number}what is wanted`,
      cells: this.wanted.filter((c) => !others.includes(c.id)),
      now: aim.read,
      set: (id) => this.setAim(k, id === '' ? null : this.aimOf(id, aim.sense)),
      ...(k > 0 ? { none: 'nothing else' } : {}),
    })}${cell.kind.name === 'curve' ? html` on average from ${this.along(aim, k, 'from')} to ${this.along(aim, k, 'to')} ${alongShown(this.store, cell).unit.symbol}` : ''}`;
  }
  private along(aim: BestAim, k: number, end: 'from' | 'to'): TemplateResult {
    const cell = this.named(aim.read);
    const shown = alongShown(this.store, cell);
    return blank(`Mean of ${lower(cell.label)} ${end}`, figure(aim[end]!, shown), (text) =>
      this.read(text, (cell.kind as CurveKind).x, shown, (si) => {
        if (si === aim[end === 'from' ? 'to' : 'from']) this.fault = 'The two ends of a mean differ.';
        else this.setAim(k, { ...aim, [end]: si });
      }),
    );
  }
  /** Figures, and curves over engine speed by their mean. */
  private get wanted(): readonly Cell[] {
    const { catalogue } = this.store;
    const curves = [...catalogue.cells.values()].filter(
      (c) => c.kind.name === 'curve' && (c.kind as CurveKind).x.id === 'rotation',
    );
    return [...results(catalogue).filter((c) => c.kind.name === 'scalar'), ...curves];
  }

  // What is changed
  private setVary(k: number, id: string): void {
    const { item, store } = this;
    if (id === '') return this.change({ vary: item.vary.filter((_, i) => i !== k) });
    const next = { id, ...rangeOf(store, this.named(id)) };
    this.change({ vary: k < item.vary.length ? item.vary.map((v, i) => (i === k ? next : v)) : [...item.vary, next] });
  }
  private setEnd(k: number, end: 'from' | 'to', text: string): void {
    const { item, store } = this;
    const each = item.vary[k]!;
    const cell = this.named(each.id);
    this.read(text, quantityOf(cell)!, shownOf(store, cell), (si) => {
      if (si === each[end === 'from' ? 'to' : 'from']) this.fault = 'The two ends of a range differ.';
      else this.change({ vary: item.vary.map((v, i) => (i === k ? { ...v, [end]: si } : v)) });
    });
  }
  private varied(k: number, after: string): TemplateResult {
    const { item, store } = this;
    const each = item.vary[k];
    const free = changeable(
      store,
      item.aims.map((aim) => this.named(aim.read)),
    ).filter((c) => c.id === each?.id || item.vary.every((v) => v.id !== c.id));
    const list = cellList(store, {
      name: `Changed, ${k + 1}`,
      cells: free,
      now: each?.id ?? '',
      set: (id) => this.setVary(k, id),
      ...(each && item.vary.length === 1 ? {} : { none: 'nothing else' }),
    });
    if (!each) return glued(list, after);
    const cell = this.named(each.id);
    const end = (which: 'from' | 'to'): TemplateResult =>
      blank(`${cell.label} ${which}`, figureOf(store, cell, each[which]), (text) => this.setEnd(k, which, text));
    return html`${list} from ${end('from')} to ${end('to')} ${unitWord(store, cell)}${after}`;
  }

  // Limits
  private setLimit(k: number, limit: BestLimit | null): void {
    const { limits } = this.item;
    if (limit && k === limits.length) this.change({ limits: [...limits, limit] });
    else this.change({ limits: limits.flatMap((l, i) => (i !== k ? [l] : limit ? [limit] : [])) });
  }
  /** A new limit begins where the engine stands. */
  private limitOf(id: string): BestLimit | null {
    const cell = this.named(id);
    if (cell.kind.name === 'verdict') return { read: id, worst: wordsOf(cell).at(-1)![0] };
    const now = lastGood(this.store.state(cell));
    const { unit, digits } = shownOf(this.store, cell);
    const scale = 10 ** digits;
    const even = typeof now === 'number' ? Math.floor(toUnit(now, unit) * scale + 1e-6) / scale : 0;
    return { read: id, least: tidy(fromUnit(even, unit)) };
  }
  private limit(k: number, after: string): TemplateResult {
    const { item, store } = this;
    const limit = item.limits[k];
    const list = cellList(store, {
      name: `Limit ${k + 1}`,
      cells: results(store.catalogue).filter((c) => c.kind.name !== 'verdict' || wordsOf(c).length > 0),
      now: limit?.read ?? '',
      set: (id) => this.setLimit(k, id === '' ? null : this.limitOf(id)),
      none: item.limits.length === 0 ? 'no limit' : 'no other limit',
    });
    if (!limit) return glued(list, after);
    const cell = this.named(limit.read);
    if ('worst' in limit)
      return html`${list} at worst
      ${glued(
        optionList(`${cell.label} at worst`, wordsOf(cell, limit.worst), limit.worst, (worst) =>
          this.setLimit(k, { read: limit.read, worst }),
        ),
        after,
      )}`;
    const value = 'least' in limit ? limit.least : limit.most;
    const as = (which: 'least' | 'most', si: number): void =>
      this.setLimit(k, which === 'least' ? { read: limit.read, least: si } : { read: limit.read, most: si });
    const which = 'least' in limit ? 'least' : 'most';
    return html`${list}
    ${optionList(
      `${cell.label} at least or at most`,
      [
        ['least', 'at least'],
        ['most', 'at most'],
      ],
      which,
      (other) => as(other as 'least' | 'most', value),
    )}
    ${blank(`Limit of ${lower(cell.label)}`, figureOf(store, cell, value), (text) => this.read(text, quantityOf(cell)!, shownOf(store, cell), (si) => as(which, si)))}
    ${unitWord(store, cell)}${after}`;
  }

  private setBudget(text: string): void {
    const { designs } = mostOfBest;
    const number = /^\s*\d{1,6}\s*$/.test(text) ? Number(text) : NaN;
    if (number >= 10 && number <= designs) this.change({ budget: number });
    else this.fault = `Write how many designs to try: a whole number from 10 to ${designs}.`;
  }

  protected override render(): TemplateResult {
    const { item } = this;
    const upTo = (count: number, most: number): number[] =>
      Array.from({ length: Math.min(most, count + 1) }, (_, k) => k);
    const varied = upTo(item.vary.length, mostOfBest.vary);
    const limits = upTo(item.limits.length, mostOfBest.limits);
    return html`<p class="sentence">
        ${this.aim(item.aims[0]!, 0)} ${item.aims[1] ? html`and ${this.aim(item.aims[1], 1)}` : this.secondAim()} by
        changing ${varied.map((k) => html`${this.varied(k, joint(k, varied.length) || ';')} `)} with
        ${limits.map((k) => html`${this.limit(k, joint(k, limits.length) || '.')} `)} Try
        ${blank('How many designs', String(item.budget), (text) => this.setBudget(text))} designs.
      </p>
      ${this.fault ? html`<p class="fault" role="alert">${this.fault}</p>` : nothing}`;
  }
  private secondAim(): TemplateResult {
    const [first] = this.item.aims;
    return cellList(this.store, {
      name: 'Second aim: what is wanted',
      cells: this.wanted.filter((c) => c.id !== first!.read),
      now: '',
      set: (id) => this.setAim(1, this.aimOf(id, 'most')),
      none: 'and nothing else',
    });
  }
}

customElements.define('best-sentence', BestSentence);
declare global {
  interface HTMLElementTagNameMap {
    'best-sentence': BestSentence;
  }
}
