import { html, nothing, type TemplateResult } from 'lit';
import { csv } from '../exports/csv.ts';
import type { Cell } from '../graph/cell.ts';
import type { State } from '../graph/state.ts';
import { cautionsOf } from '../notebook/cautions.ts';
import { comingOut, goingIn, slowUnder } from '../notebook/comparison.ts';
import type { Document } from '../notebook/document.ts';
import { brought } from './comparison-cautions.ts';
import { type Column, type Entry, type Row, rowIn, rowOut, twinOf } from './comparison-data.ts';
import { dashSample } from './dash-sample.ts';
import { fileName, saveFile } from './files.ts';
import { Overlay, placed } from './overlay.ts';
import { Piece } from './piece.ts';
import { Rest } from './rest.ts';
import { Seen } from './seen.ts';
import { senseOf, when } from './words.ts';

/** What the table is made of as long as the document is the same. */
interface Made {
  readonly of: Document;
  readonly given: readonly Cell[];
  readonly quick: readonly Cell[];
  readonly late: readonly Cell[];
  readonly slow: readonly Cell[];
}

/** <comparison-table>: variants side by side: what differs going in, over what comes out, and the cautions one has and another has not. */
export class ComparisonTable extends Piece {
  static override properties = { ...Piece.properties, notebook: { attribute: false }, beside: { state: true } };
  declare notebook: Document;
  /** The variant that the others are held against; the first, unless another is asked for. */
  declare beside: string | null;
  private made: Made | undefined;
  private cautions: readonly Cell[] = [];
  /** It has been in sight: what was found out by then stays. */
  private hasLooked = false;
  private last = '';
  private readonly rest = new Rest(this);
  /** What takes long is begun only where its rows are seen, and once hands rest. */
  private readonly seen = new Seen(
    this,
    () => this.querySelector('.late'),
    () => this.requestUpdate(),
  );
  private readonly overlay = new Overlay(this, { cells: () => this.looked });

  constructor() {
    super();
    this.beside = null;
  }
  /** Far from the window it keeps its place, and no more. */
  protected override shouldUpdate(): boolean {
    const { isNear } = this.overlay;
    const now = `${isNear} ${placed(this.store.document).length}`;
    const isNews = isNear || now !== this.last;
    this.last = now;
    return isNews;
  }
  private get rows(): Made {
    const { store } = this;
    const { document } = store;
    if (this.made?.of === document) return this.made;
    const ids = placed(document).map((v) => v.id);
    const given = goingIn(document, store.catalogue, ids);
    const out = comingOut(document, store.catalogue, given);
    const isQuick = (c: Cell): boolean => store.live.isQuick(c);
    const late = out.filter((c) => !isQuick(c));
    this.made = { of: document, given, quick: out.filter(isQuick), late, slow: slowUnder(store, late) };
    if (this.cautions.length === 0) this.cautions = cautionsOf(store.catalogue).filter(isQuick);
    return this.made;
  }
  /** What it looks at, in each variant. */
  private get looked(): readonly Cell[] {
    if (placed(this.notebook).length < 2) return [];
    const { given, quick, late, slow } = this.rows;
    const begun = this.seen.isSeen && this.rest.isAtRest ? [...late, ...slow] : [];
    return [...given.filter((c) => c.role !== 'input'), ...quick, ...this.cautions, ...begun];
  }
  protected override watched(): readonly Cell[] {
    return this.overlay.isNear ? this.looked : [];
  }
  private get columns(): readonly Column[] {
    const { store } = this;
    const { isNear } = this.overlay;
    this.hasLooked ||= isNear;
    return placed(store.document).map(({ id, name, place }) => ({
      id,
      name,
      place,
      state: (c): State | undefined => {
        if (id === store.document.chosen) return (isNear ? store : store.live).state(c);
        return this.hasLooked && id !== null ? store.others?.state(id, c) : undefined;
      },
    }));
  }

  protected override render(): TemplateResult | typeof nothing {
    const { columns, store } = this;
    if (columns.length < 2) return nothing;
    const beside = Math.max(
      0,
      columns.findIndex((c) => c.id === this.beside),
    );
    const { given, quick, late } = this.rows;
    const inside = given.map((c) => rowIn(store, c, columns, beside));
    const out = quick.map((c) => rowOut(store, c, columns, beside));
    const slow = late.map((c) => rowOut(store, c, columns, beside));
    const title = `${columns.map((c) => c.name).join(', ')}, side by side`;
    return html`<section class="chapter split comparison" aria-labelledby="side-by-side">
      <div class="col">
        <div class="head"><h2 id="side-by-side">Side by side</h2></div>
        <p>What differs going in, over what comes out. Choose a variant to change what is blue.</p>
        <p class="sentence">Differences are against ${this.besides(columns, beside)}.</p>
      </div>
      <div class="figs tall">
        <div class="tablewrap" tabindex="0" role="region" aria-label=${title}>
          <table>
            <thead>
              <tr>
                <td></td>
                ${columns.map((c) => this.head(c))}
              </tr>
            </thead>
            <tbody>
              ${inside.map((row) => this.row(row, columns, true))}
              ${when(
                inside.length === 0,
                () =>
                  html`<tr class="same">
                    <th scope="row">Nothing differs yet</th>
                    ${columns.map(() => html`<td>–</td>`)}
                  </tr>`,
              )}
            </tbody>
            <tbody class="out">
              ${out.map((row) => this.row(row, columns, false))}
            </tbody>
            <tbody class="late">
              ${this.progress(columns)} ${slow.map((row) => this.row(row, columns, false))}
            </tbody>
          </table>
        </div>
        <div class="figtools">
          <button @click=${() => this.save(title, columns, [...inside, ...out, ...slow], beside)}>CSV</button>
        </div>
      </div>
      <div class="col answers">${brought(store, this.cautions, columns, beside)}</div>
    </section>`;
  }
  private besides(columns: readonly Column[], beside: number): TemplateResult {
    return html`<select
      class="blank"
      aria-label="Differences against"
      @change=${(e: Event) => (this.beside = columns[(e.target as HTMLSelectElement).selectedIndex]!.id)}
    >
      ${columns.map((c, i) => html`<option ?selected=${i === beside}>${c.name}</option>`)}
    </select>`;
  }
  private head({ id, name, place }: Column): TemplateResult {
    const isChosen = id === this.store.document.chosen;
    return html`<th scope="col" class=${isChosen ? 'chosen' : nothing}>
      ${dashSample(place)}
      <button class="pick" aria-label="Look at ${name}" aria-pressed=${isChosen} @click=${() => this.store.choose(id)}>
        ${name}
      </button>
    </th>`;
  }
  private row({ cell, unit, isSame, entries }: Row, columns: readonly Column[], isGiven: boolean): TemplateResult {
    return html`<tr class=${isSame ? 'same' : nothing}>
      <th scope="row">${cell.label}${unitAfter(cell, unit)}</th>
      ${entries.map((e, i) => {
        const isYours = isGiven && e.note !== 'computed';
        return html`<td class=${isYours ? 'yours' : nothing}>
          ${isYours ? this.way(cell, columns[i]!, e) : value(e)}${e.note === '' ? nothing : html`<small>${e.note}</small>`}${difference(e)}
        </td>`;
      })}
    </tr>`;
  }
  /** Leads to the field, where this variant is looked at then. */
  private way(cell: Cell, { id }: Column, entry: Entry): TemplateResult {
    return html`<a href="#${cell.id}" @click=${() => this.store.choose(id)}>${value(entry)}</a>`;
  }
  /** How far slow work has come for each; nothing once all of it is done. */
  private progress(columns: readonly Column[]): TemplateResult | typeof nothing {
    const { slow } = this.rows;
    const done = columns.map((c) => doneOf(slow.map((cell) => c.state(cell))));
    if (done.every((share) => share === 1)) return nothing;
    return html`<tr class="doing">
      <th scope="row">${this.seen.isSeen ? 'Being worked out' : 'Begins once it is in sight'}</th>
      ${done.map(
        (share) =>
          html`<td>
            ${
              share === 1
                ? 'done'
                : html`${Math.round(share * 100)} %
                    <div class="bar" style="--done:${Math.round(share * 100)}%"></div>`
            }
          </td>`,
      )}
    </tr>`;
  }
  private save(title: string, columns: readonly Column[], rows: readonly Row[], beside: number): void {
    const twin = twinOf(columns, rows, beside);
    const name = fileName(`${this.store.document.title} side by side`, 'side-by-side');
    saveFile(`${name.slice(0, 60)}.csv`, csv(title, twin.columns, twin.rows), 'text/csv');
  }
}

/** The unit after the name of a row; degrees stand at their figures, which leaves where they are counted from. */
function unitAfter(cell: Cell, unit: string): TemplateResult | typeof nothing {
  const sense = senseOf(cell);
  if (sense) return html`<small>, <abbr title="degrees ${sense.words}">${sense.short}</abbr></small>`;
  return unit === '' || unit === '°' ? nothing : html`<small>, ${unit}</small>`;
}
function value({ text, sign, tone, isStale }: Entry): TemplateResult | string {
  if (tone) return html`<b class="is-${tone} ${isStale ? 'stale' : ''}"><span class="sw is-${tone}"></span>${text}</b>`;
  return isStale ? html`<span class="stale">${text}${sign}</span>` : `${text}${sign}`;
}
const difference = ({ difference, sign, share }: Entry): TemplateResult | typeof nothing =>
  difference === '' ? nothing : html`<small>${difference}${sign}${share === '' ? '' : `, ${share}`}</small>`;

/** Share of slow work that is done, of cells that nobody has looked at none. */
function doneOf(states: readonly (State | undefined)[]): number {
  const shares = states.map((s) => (s === undefined ? 0 : s.is === 'waiting' || s.is === 'coming' ? s.done : 1));
  return shares.length === 0 ? 1 : shares.reduce((sum, share) => sum + share, 0) / shares.length;
}
customElements.define('comparison-table', ComparisonTable);
declare global {
  interface HTMLElementTagNameMap {
    'comparison-table': ComparisonTable;
  }
}
