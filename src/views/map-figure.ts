import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { Explorer } from '../graph/explorer.ts';
import { NotSettled, type Snapshot } from '../graph/snapshot.ts';
import { Impossible, lastGood } from '../graph/state.ts';
import type { MapItem } from '../notebook/document.ts';
import { type MapFound, mapFound, mapKeyOf, type MapQuestion, mapQuestionOf, putOn } from '../notebook/maps.ts';
import { type MapDrawing, mapDrawing, overMap } from '../plots/map-drawing.ts';
import { type MapGround, type MapPicture, mapTwin } from '../plots/map-figure.ts';
import { tradeOf } from '../plots/map-trade.ts';
import { type Phrase, say } from '../units/phrase.ts';
import { fromUnit, tidy, toUnit } from '../units/unit.ts';
import { figureTools, workedAnew } from './figure-parts.ts';
import { twinTable } from './figure-tools.ts';
import { onFrame } from './frame.ts';
import { Gesture } from './gesture.ts';
import { mapGround, mapPicture, tradeWords } from './map-data.ts';
import { about, QuickMaps, SlowMaps } from './map-work.ts';
import { Near } from './near.ts';
import { Piece } from './piece.ts';
import { Rest } from './rest.ts';
import { rewrite } from './rewrite.ts';
import { Sight } from './sight.ts';
import { figureOf, lower, shownOf, spoken, when } from './words.ts';
import './map-sentence.ts';

let made = 0;

/** <map-figure>: one result over two figures; the point on it moves both. */
export class MapFigure extends Piece {
  static override properties = {
    ...Piece.properties,
    item: { attribute: false },
    explorer: { attribute: false },
    number: { type: Number },
    table: { state: true },
    note: { state: true },
    halted: { state: true },
  };
  declare item: MapItem;
  declare explorer: Explorer | null;
  declare number: number;
  declare table: boolean;
  /** Why the figure is not of the present. */
  declare note: TemplateResult | string | null;
  /** The slow map that was told to stop, or could not go on, and why. */
  declare halted: { readonly key: string; readonly why: string | null } | null;
  private key = '';
  private question: MapQuestion | null = null;
  /** What is shown, and of what it is: the map's key with what its units were. */
  private shown: { readonly key: string; readonly found: MapFound; readonly ground: MapGround } | null = null;
  private picture: MapPicture | null = null;
  private drawing: { readonly ground: MapGround; readonly width: number; readonly drawn: MapDrawing } | null = null;
  private readonly patternId = `map${++made}`;
  private readonly gesture = new Gesture();
  private readonly rest = new Rest(this);
  private wasAtRest = false;
  private readonly near = new Near(this, (isNear) => isNear && onFrame(this.renew));
  private unwatchAll: (() => void) | undefined;
  private readonly quick = new QuickMaps(() => onFrame(this.renew));
  private readonly slow = new SlowMaps((fault) => this.heard(fault));
  private readonly sight = new Sight(
    this,
    () => this.querySelector('.frame'),
    () => this.draw(),
  );

  constructor() {
    super();
    this.number = 0;
    this.table = false;
    this.note = null;
    this.halted = null;
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
    this.slow.stop();
  }
  private get cells(): { readonly read: Cell; readonly x: Cell; readonly y: Cell } {
    const { cells } = this.store.catalogue;
    const { read, x, y } = this.item;
    return { read: cells.get(read)!, x: cells.get(x.vary)!, y: cells.get(y.vary)! };
  }
  protected override watched(): readonly Cell[] {
    const { read, x, y } = this.cells;
    return this.store.live.isQuick(read) ? [read, x, y] : [x, y];
  }
  /** True while a slow map is being worked on. */
  get busy(): boolean {
    return this.slow.isAt(this.key);
  }
  protected override updated(): void {
    if (this.rest.isAtRest !== this.wasAtRest) {
      this.wasAtRest = this.rest.isAtRest;
      onFrame(this.renew);
    }
    onFrame(this.draw);
  }

  private readonly renew = (): void => {
    if (!this.isConnected) return;
    const { store } = this;
    try {
      const at = store.snapshot();
      const question = mapQuestionOf(this.item, store.catalogue, at);
      this.question = question;
      this.key = mapKeyOf(store, at, question);
      this.note = null;
      if (question.isSlow) this.renewSlowly(at, question);
      else {
        this.slow.stop();
        const found = this.quick.find(this.key, at, question);
        const { last } = this.quick;
        if (found) this.show(at, question, found);
        else if (last?.item === this.item) this.show(at, question, last.found, last.key);
      }
    } catch (error) {
      this.slow.stop();
      if (error instanceof Impossible) {
        // Nothing of it could be of this question.
        [this.shown, this.picture, this.question] = [null, null, null];
        this.note = say(error.phrase, store.system);
      } else if (error instanceof NotSettled) this.note = this.waitsFor(error);
      else throw error;
    }
    this.requestUpdate();
  };
  private waitsFor(error: NotSettled): TemplateResult {
    // Whose value is to blame is often another cell than the one that was read.
    const { cells } = this.store.catalogue;
    const blamed = error.state.is === 'fault' ? cells.get(error.state.fault.about) : undefined;
    const { id, label } = blamed ?? error.cell;
    return html`Waits for <a href="#${id}">${lower(label)}</a>.${this.shown ? ' This is the last good figure.' : ''}`;
  }
  /** A slow map is worked on only while nothing is being changed; what stands of it is kept. */
  private renewSlowly(at: Snapshot, question: MapQuestion): void {
    const { key, slow, explorer } = this;
    const known = slow.find(key);
    if (known) this.show(at, question, mapFound(question, known));
    const isWhole = known?.stands.every((is) => is === 1) === true;
    const isWanted = !isWhole && this.rest.isAtRest && this.halted?.key !== key;
    if (!isWanted || !slow.isAt(key)) slow.stop();
    if (isWanted && this.near.isNear && explorer) slow.start(key, explorer, this.store, question);
  }
  private heard(fault: Phrase | null): void {
    if (fault) this.halted = { key: this.key, why: say(fault, this.store.system) };
    onFrame(this.renew);
  }
  private show(at: Snapshot, question: MapQuestion, found: MapFound, of = this.key): void {
    const { store, item } = this;
    const key = JSON.stringify([of, item.id, store.document.units]);
    const isSame = this.shown?.key === key && this.shown.found.values === found.values;
    const ground = isSame ? this.shown!.ground : mapGround(store, question, found);
    this.shown = { key, found, ground };
    this.picture = mapPicture(store, at, question, ground);
  }

  private readonly draw = (): void => {
    const { room: width } = this.sight;
    const { picture } = this;
    const svg = this.querySelector<SVGSVGElement>('.frame svg');
    if (width === null || !picture || !svg) return;
    const { ground } = picture;
    if (this.drawing?.ground !== ground || this.drawing.width !== width) {
      const drawn = mapDrawing(ground, width, this.patternId);
      this.drawing = { ground, width, drawn };
      this.requestUpdate(); // what the caption says is told from the drawing
    }
    const { drawn } = this.drawing;
    const { height } = drawn.size;
    svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
    svg.setAttribute('width', String(width));
    svg.setAttribute('height', String(height));
    rewrite(svg.querySelector('.ground')!, drawn.body);
    rewrite(svg.querySelector('.over')!, overMap(picture, drawn));
    svg.setAttribute('aria-label', picture.label);
    const handle = this.querySelector<HTMLElement>('.handle');
    if (!handle || !picture.mark) return;
    handle.style.left = `${drawn.x(picture.mark.x)}px`;
    handle.style.top = `${drawn.y(picture.mark.y)}px`;
  };

  /** Moves both figures, in shown units; one that is not given stays where it stands. */
  private move(to: { readonly x?: number; readonly y?: number }): void {
    const { store, question } = this;
    const { x, y } = this.cells;
    if (!question) return;
    const place = { x: this.placed(x, this.item.x, to.x), y: this.placed(y, this.item.y, to.y) };
    const said = (['x', 'y'] as const)
      .filter((way) => to[way] !== undefined)
      .map((way) => `${lower({ x, y }[way].label)} to ${figureOf(store, { x, y }[way], place[way])}`);
    try {
      putOn(store, question, place, {
        what: `Set ${said.join(', ')}`,
        place: this.item.id,
        gesture: this.gesture.now ?? this.gesture.key,
      });
    } catch (error) {
      if (!(error instanceof Impossible)) throw error; // it stays where it can be
    }
  }
  /** A value in SI on the shown grid, inside the map. */
  private placed(cell: Cell, { from, to }: MapItem['x'], shown: number | undefined): number {
    if (shown === undefined) return Number(lastGood(this.store.state(cell)));
    const { unit, step } = shownOf(this.store, cell);
    const even = tidy(fromUnit(Math.round(shown / step) * step, unit));
    return Math.min(Math.max(from, to), Math.max(Math.min(from, to), even));
  }
  /** Where the picture's corner was when it was taken hold of: what is said above may grow and push it down. */
  private corner = { x: 0, y: 0 };
  private take(event: PointerEvent): void {
    const handle = event.currentTarget as HTMLElement;
    handle.setPointerCapture(event.pointerId);
    this.corner = { x: event.clientX - handle.offsetLeft - 22, y: event.clientY - handle.offsetTop - 22 };
    this.gesture.begin();
  }
  private drag(event: PointerEvent): void {
    if (this.gesture.now) this.goTo(event.clientX - this.corner.x, event.clientY - this.corner.y);
  }
  private drop(): void {
    this.gesture.end();
    onFrame(this.renew);
  }
  private goTo(px: number, py: number): void {
    if (this.drawing) this.move(this.drawing.drawn.valueAt(px, py));
  }
  private point(event: MouseEvent): void {
    if (!this.picture?.mark?.movable && this.picture?.mark !== null) return;
    const { left, top } = (event.currentTarget as Element).getBoundingClientRect();
    this.goTo(event.clientX - left, event.clientY - top);
  }
  private press(event: KeyboardEvent): void {
    const way = waysOf[event.key];
    if (!way) return;
    event.preventDefault();
    const [axis, sign] = way;
    const cell = this.cells[axis];
    const { from, to } = this.item[axis];
    const { unit, step } = shownOf(this.store, cell);
    const by = sign * Math.sign(to - from) * (event.shiftKey ? 10 : 1);
    const at = toUnit(Number(lastGood(this.store.state(cell))), unit) / step;
    this.move({ [axis]: ((by > 0 ? Math.floor(at + 1e-6) : Math.ceil(at - 1e-6)) + by) * step });
  }

  protected override render(): TemplateResult {
    const { store, item, picture, question } = this;
    const { read, x, y } = this.cells;
    const isPresent = this.isPresent;
    const title = `${read.label} over ${lower(x.label)} and ${lower(y.label)}`;
    const ground = picture?.ground;
    return html`<figure class="fig map" id=${item.id}>
      <map-sentence .store=${store} .item=${item}></map-sentence>
      ${when(this.note, () => html`<p class="stale-note">${this.note}</p>`)}
      ${question?.isSlow && !this.note ? this.progress(question) : nothing}
      ${when(!this.note && ground && !isPresent && !question?.isSlow, () => html`<p class="stale-note">${workedAnew}</p>`)}
      <div class="frame ${ground && (this.note || !isPresent) ? 'stale' : ''} ${ground ? '' : 'empty'}">
        ${
          this.table && ground
            ? twinTable(`${title}, across and down`, mapTwin(ground))
            : html`<svg role="img" aria-label="Not drawn yet" @click=${(e: MouseEvent) => this.point(e)}>
                  <g class="ground"></g>
                  <g class="over"></g></svg
                >${this.handle()}`
        }
      </div>
      <figcaption><b>Figure ${this.number}.</b> ${this.caption()}</figcaption>
      <div class="tools">
        ${ground ? figureTools(this, { title, twin: () => mapTwin(ground) }) : nothing}
        <button class="why sans" @click=${() => this.removeItem()}>Remove this map</button>
      </div>
    </figure>`;
  }
  /** Whether what is shown is of what stands now. */
  private get isPresent(): boolean {
    return this.shown?.key === JSON.stringify([this.key, this.item.id, this.store.document.units]);
  }
  private handle(): TemplateResult | typeof nothing {
    const { store, picture, item } = this;
    const { read, x, y } = this.cells;
    if (!picture?.mark?.movable) return nothing;
    const { mark, ground } = picture;
    const at = (cell: Cell, shown: number): string => spoken(store, cell, fromUnit(shown, shownOf(store, cell).unit));
    const z = Number.isFinite(mark.z) ? `${lower(read.label)} ${at(read, mark.z)}` : 'no answer';
    return html`<div
        class="handle free both"
        role="slider"
        tabindex="0"
        aria-label=${`${x.label} and ${lower(y.label)}, on the map`}
        aria-describedby=${`${item.id}-keys`}
        aria-valuemin=${Math.min(...ground.x.domain)}
        aria-valuemax=${Math.max(...ground.x.domain)}
        aria-valuenow=${mark.x}
        aria-valuetext=${`${x.label} ${at(x, mark.x)}, ${lower(y.label)} ${at(y, mark.y)}: ${z}`}
        @keydown=${(e: KeyboardEvent) => this.press(e)}
        @pointerdown=${(e: PointerEvent) => this.take(e)}
        @pointermove=${(e: PointerEvent) => this.drag(e)}
        @pointerup=${() => this.drop()}
        @pointercancel=${() => this.drop()}
      ></div>
      <span hidden id=${`${item.id}-keys`}
        >Left and right move ${lower(x.label)}, up and down ${lower(y.label)}.</span
      >`;
  }
  private progress(question: MapQuestion): TemplateResult | typeof nothing {
    const { key, slow } = this;
    const { points, of, left } = slow.progress(key, question.x.values.length * question.y.values.length);
    if (points === of) return nothing;
    const halted = this.halted?.key === key ? this.halted : null;
    const turn = (): void => {
      this.halted = halted ? null : { key, why: null };
      onFrame(this.renew);
    };
    const more = slow.isAt(key)
      ? left === null
        ? '.'
        : `, ${about(left)}.`
      : halted
        ? '.'
        : '; the rest follow while nothing is being changed.';
    const old = this.picture && !this.isPresent ? ' This is the last good figure.' : '';
    return html`<div class="bar" style="--done:${Math.round((points / of) * 100)}%"></div>
      <p class="stale-note">
        ${halted?.why ?? `${points} of ${of} points stand${more}`}${old}
        <button class="link" @click=${turn}>${halted ? 'go on' : 'stop'}</button>
      </p>`;
  }
  /** What there is to see: the bands, what one figure is worth in the other, how to move the point. */
  private caption(): string {
    const { picture, question, store } = this;
    if (!picture || !question) return '';
    const { ground, mark } = picture;
    const bands =
      ground.edges.length > 0
        ? 'The bands are those of here; their edges are common practice, and yours to move. '
        : '';
    const others = ground.others.length > 0 ? 'Dashed: the edges at the lowest altitude. ' : '';
    const relief = this.drawing?.ground === ground ? this.drawing.drawn.relief : null;
    const trade = relief ? tradeOf(picture, relief) : null;
    const handle = !mark
      ? 'The present setting lies outside this map.'
      : mark.movable
        ? 'Drag the point, or click where it should go.'
        : 'The point is the present setting.';
    return `${bands}${others}${trade ? tradeWords(store, question, trade) : ''}${handle}`;
  }
  private removeItem(): void {
    this.store.change({ what: 'Removed a map', announce: true }, (draft) => {
      draft.page = draft.page.filter((p) => p.id !== this.item.id);
    });
  }
}

const waysOf: Readonly<Record<string, readonly ['x' | 'y', number]>> = {
  ArrowRight: ['x', 1],
  ArrowLeft: ['x', -1],
  ArrowUp: ['y', 1],
  ArrowDown: ['y', -1],
};
customElements.define('map-figure', MapFigure);
declare global {
  interface HTMLElementTagNameMap {
    'map-figure': MapFigure;
  }
}
