import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { Explorer } from '../graph/explorer.ts';
import { NotSettled } from '../graph/snapshot.ts';
import { type Spread, together } from '../graph/spread.ts';
import { type DrawsItem, usualDraws } from '../notebook/document.ts';
import { couldVary, type DrawsQuestion, drawsQuestion } from '../notebook/draws.ts';
import type { Drawing } from '../plots/drawing.ts';
import { histogram } from '../plots/histogram.ts';
import { say } from '../units/phrase.ts';
import { type DrawsView, drawsView } from './draws-data.ts';
import { DrawsWork } from './draws-work.ts';
import { figureTools, waitsFor } from './figure-parts.ts';
import { twinTable } from './figure-tools.ts';
import { onFrame } from './frame.ts';
import { Near } from './near.ts';
import { Piece } from './piece.ts';
import { Rest } from './rest.ts';
import { rewrite } from './rewrite.ts';
import { shareBars } from './share-bars.ts';
import { Sight } from './sight.ts';
import { differenceOf, grouped, lower, when } from './words.ts';
import './draws-sentence.ts';

let made = 0;
const bars = 8;
const noticed = 250; // ms: work that takes less is not worth a word

/** <draws-figure>: how often a result comes to what if every ± holds, the chance of each verdict, and what moves it. */
export class DrawsFigure extends Piece {
  static override properties = {
    ...Piece.properties,
    item: { attribute: false },
    explorer: { attribute: false },
    number: { type: Number },
    table: { state: true },
  };
  declare item: DrawsItem;
  declare explorer: Explorer | null;
  declare number: number;
  declare table: boolean;
  private question: DrawsQuestion | null = null;
  /** The id of the cell without a value that it waits for. */
  private lacks: string | null = null;
  private view: DrawsView | null = null;
  private drawn: { readonly view: DrawsView; readonly width: number; readonly drawing: Drawing } | null = null;
  private unwatchAll: (() => void) | undefined;
  private readonly patternId = `draws${++made}`;
  private readonly work = new DrawsWork(() => onFrame(this.renew));
  private readonly rest = new Rest(this);
  private readonly near = new Near(this, (isNear) => isNear && onFrame(this.renew));
  private readonly sight = new Sight(
    this,
    () => this.querySelector('.frame'),
    () => this.draw(),
  );

  constructor() {
    super();
    this.number = 0;
    this.table = false;
    this.explorer = null;
  }
  override connectedCallback(): void {
    super.connectedCallback();
    void this.updateComplete.then(() => {
      if (!this.isConnected) return;
      this.unwatchAll ??= this.store.watchAll(() => onFrame(this.renew));
      onFrame(this.renew);
    });
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatchAll?.();
    this.unwatchAll = undefined;
    this.work.halt();
  }
  protected override watched(): readonly Cell[] {
    const read = this.store.catalogue.cells.get(this.item.read)!;
    return this.store.live.isQuick(read) ? [read] : [];
  }
  protected override updated(): void {
    if (this.question?.isSlow && !this.work.isRunning && this.rest.isAtRest) onFrame(this.seek);
    onFrame(this.draw);
  }

  private readonly renew = (): void => {
    if (!this.isConnected) return;
    const { store, work } = this;
    if (this.question?.item.read !== this.item.read) [this.question, this.view] = [null, null];
    try {
      this.question = drawsQuestion(store, this.item);
      this.lacks = null;
    } catch (error) {
      if (!(error instanceof NotSettled)) throw error;
      this.lacks = error.state.is === 'fault' ? error.state.fault.about : error.cell.id;
      work.halt();
    }
    const { question } = this;
    if (question && this.lacks === null) {
      work.about([question.read, ...question.judges].map((c) => c.id).join(' '));
      this.seek();
      const { result } = work.draws;
      this.view = result ? drawsView(store, question, result) : null;
    }
    this.requestUpdate();
  };
  private readonly seek = (): void => {
    const { explorer, question, store } = this;
    if (!question || !explorer || this.lacks !== null || !this.near.isNear || question.varied.length === 0) return;
    this.work.seek(store, question, explorer, this.rest.isAtRest);
  };
  private readonly draw = (): void => {
    const { room: width } = this.sight;
    if (width === null || !this.view) return;
    if (this.view !== this.drawn?.view || width !== this.drawn.width) {
      const drawing = histogram(this.view.histogram, { width, system: this.store.system, id: this.patternId });
      this.drawn = { view: this.view, width, drawing };
      if (this.table) this.requestUpdate();
    }
    const { drawing } = this.drawn;
    const svg = this.querySelector('.frame svg');
    if (!svg) return;
    svg.setAttribute('viewBox', `0 0 ${drawing.width} ${drawing.height}`);
    svg.setAttribute('width', String(drawing.width));
    svg.setAttribute('height', String(drawing.height));
    svg.setAttribute('aria-label', drawing.label);
    rewrite(svg, drawing.body);
  };

  protected override render(): TemplateResult {
    const { item, question, store, view } = this;
    const isBare = question?.varied.length === 0;
    const isOld = this.lacks !== null || (question?.isSlow === true && this.work.draws.of !== this.work.draws.key);
    return html`<figure class="fig draws" id=${item.id}>
      <draws-sentence .store=${store} .item=${item} .slow=${question?.isSlow ?? false}></draws-sentence>
      ${this.note(isBare)}
      ${when(
        !isBare,
        () =>
          html`${this.progress()}
            <div class="frame ${isOld ? 'stale' : ''} ${view ? '' : 'empty'}">${this.picture()}</div>
            ${view?.says.map((words) => html`<p class="drawn">${words}</p>`)} ${this.moves()}`,
      )}
      <figcaption><b>Figure ${this.number}.</b> ${this.caption()}</figcaption>
      <div class="tools">
        ${when(view && !isBare, () => figureTools(this, { title: this.heading, twin: () => this.drawn?.drawing.twin ?? { columns: [], rows: [] } }))}
        <button class="why sans" @click=${() => this.removeItem()}>Remove these draws</button>
      </div>
    </figure>`;
  }
  private get read(): Cell {
    return this.store.catalogue.cells.get(this.item.read)!;
  }
  private get heading(): string {
    return `Draws of ${lower(this.read.label)}`;
  }
  private picture(): TemplateResult {
    return this.table && this.drawn
      ? twinTable(this.heading, this.drawn.drawing.twin)
      : html`<svg role="img" aria-label="Not drawn yet"></svg>`;
  }
  private note(isBare: boolean): TemplateResult | typeof nothing {
    const { store, work } = this;
    if (this.lacks !== null) return waitsFor(store, this.lacks, this.view !== null);
    if (isBare) {
      const field = couldVary(store, this.read);
      return html`<p class="bare">
        Nothing that ${lower(this.read.label)} stands on has a ±, so there is nothing to draw.
        ${field ? html`Give one, beside its unit: to <a href="#${field.id}">${lower(field.label)}</a>, say.` : nothing}
      </p>`;
    }
    const { fault } = work.draws;
    return fault ? html`<p class="stale-note">${say(fault, store.system)}</p>` : nothing;
  }
  /** How far it is; slow draws can be stopped. */
  private progress(): TemplateResult | typeof nothing {
    const { question, work } = this;
    const { draws } = work;
    if (!question?.isSlow) {
      const isLong = draws.isRunning && performance.now() - draws.began > noticed;
      return isLong ? barOf(draws.done) : nothing;
    }
    const wanted = question.item.seconds ?? usualDraws.seconds;
    const sofar = draws.of === draws.key ? (draws.result?.[0]!.samples.length ?? 0) : 0;
    const amount = `${Math.round(work.elapsed)} of ${wanted} s, ${grouped(sofar)} draws`;
    if (work.isRunning)
      return html`${barOf(work.elapsed / wanted)}
        <p class="stale-note" role="status">
          ${draws.isRunning ? `Drawing: ${amount}.` : 'Working out what moves it.'}
          <button class="link" @click=${() => this.turn(() => work.stop())}>stop</button>
        </p>`;
    if (work.isStopped)
      return html`<p class="stale-note" role="status">
        Stopped: ${amount}. <button class="link" @click=${() => this.turn(() => work.goOn())}>go on</button>
      </p>`;
    return sofar > 0
      ? html`<p class="stale-note">
          ${grouped(sofar)} draws in ${Math.round(work.elapsed)} s. More seconds make more.
        </p>`
      : html`<p class="stale-note">It is drawn once nothing is being moved.</p>`;
  }
  private turn(act: () => void): void {
    act();
    this.renew();
  }
  /** What each ± moves it by alone. */
  private moves(): TemplateResult | typeof nothing {
    const { question, store } = this;
    const spread = this.spread();
    if (!question || !spread || (spread.shares.length === 0 && this.work.shares.isRunning))
      return this.work.shares.isRunning ? html`<p class="bars-head">What moves it: being worked out.</p>` : nothing;
    if (spread.shares.length === 0) return html`<p class="bars-head">None of the ± moves it.</p>`;
    return html`<p class="bars-head">
        What moves it: each ±
        alone${this.work.shares.isRunning ? ', so far' : `, together ± ${differenceOf(store, question.read, spread.plusMinus)}`}
      </p>
      <div class="bars">${shareBars(store, question.read, spread.shares, bars)}</div>`;
  }
  private spread(): Spread | null {
    const { question, store } = this;
    if (!question?.isSlow) return question && store.spread(question.read);
    const { result } = this.work.shares;
    const { cells } = store.catalogue;
    return result && together(result.map((s) => ({ ...s, cell: cells.get(s.cell)! })));
  }
  private caption(): string {
    if (this.question?.varied.length === 0) return 'It is drawn once something has a ±.';
    const parts = ['Every ± drawn at once, each as a bell that holds 19 values of 20 within it.'];
    const { question, view } = this;
    if (view?.histogram.zones.some((z) => z.tone !== 'comfortable'))
      parts.push('The bands are those of here; their edges are common practice, and yours to move.');
    if (question?.isSlow) parts.push('Each draw is worked out coarsely, as a point of a sweep is.');
    return parts.join(' ');
  }
  private removeItem(): void {
    this.store.change({ what: 'Removed draws', announce: true }, (draft) => {
      draft.page = draft.page.filter((p) => p.id !== this.item.id);
    });
  }
}

const barOf = (done: number): TemplateResult =>
  html`<div class="bar" style="--done:${Math.round(Math.min(1, done) * 100)}%"></div>`;
customElements.define('draws-figure', DrawsFigure);
declare global {
  interface HTMLElementTagNameMap {
    'draws-figure': DrawsFigure;
  }
}
