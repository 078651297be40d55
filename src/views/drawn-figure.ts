import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { ChapterFigure } from '../graph/chapter.ts';
import { lastGood, type State } from '../graph/state.ts';
import type { Drawing } from '../plots/drawing.ts';
import { crank } from './crank.ts';
import { formValues, lateCells, toCome } from './figure-values.ts';
import { figureTools, waitsFor, workedAnew } from './figure-parts.ts';
import { formOf } from './form-of.ts';
import { onFrame } from './frame.ts';
import { Gesture } from './gesture.ts';
import { crankHold, type Hold, holdOf } from './hold.ts';
import { stepsOf } from './keys.ts';
import { Overlay } from './overlay.ts';
import { Piece } from './piece.ts';
import { rewrite } from './rewrite.ts';
import { Sight } from './sight.ts';
import { twinTable } from './figure-tools.ts';

let made = 0;

/**
 * <drawn-figure>: a figure that a chapter declares, drawn by its form; a handle on it moves a cell, or the page's
 * crank. Sends "drawn" with what there is to see.
 */
export class DrawnFigure extends Piece {
  static override properties = {
    ...Piece.properties,
    figure: { attribute: false },
    number: { type: Number },
    table: { state: true },
  };
  declare figure: ChapterFigure;
  declare number: number;
  declare table: boolean;
  protected readonly overlay: Overlay = new Overlay(this, { cells: () => this.overlaid, only: () => this.only });
  private drawing: Drawing | null = null;
  private readonly patternId = `drawn${++made}`;
  private readonly gesture = new Gesture();
  private readonly sight = new Sight(
    this,
    () => this.querySelector('.frame'),
    () => this.draw(),
  );

  constructor() {
    super();
    this.number = 0;
    this.table = false;
  }
  private unwatchCrank: (() => void) | undefined;
  override connectedCallback(): void {
    super.connectedCallback();
    this.unwatchCrank = crank.watch(() => this.figure.crank && onFrame(this.draw));
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatchCrank?.();
  }
  protected override watched(): readonly Cell[] {
    const { from, plusMinus } = this.figure;
    // What comes later may be long work: it is asked for where it is read.
    const late = this.overlay.isNear ? lateCells(this.store, this.figure) : [];
    return [...Object.values(from), ...late, ...(plusMinus ? [plusMinus] : [])];
  }
  /** What is looked at in the other variants, or in one of them. */
  protected get overlaid(): readonly Cell[] {
    return this.figure.overlays ? Object.values(this.figure.from) : [];
  }
  protected get only(): string | undefined {
    return undefined;
  }
  protected override updated(): void {
    onFrame(this.draw);
  }

  private readonly draw = (): void => {
    const { room: width } = this.sight;
    if (width === null) return;
    const { figure, store } = this;
    const form = formOf(figure.form, () => onFrame(this.draw));
    if (!form) return;
    const values = this.values();
    if (values === null) return;
    const drawing = form(values as never, {
      width,
      system: store.system,
      id: this.patternId,
      ...(figure.crank && crank.angle !== undefined ? { cursor: crank.angle } : {}),
    });
    const isNew = drawing.body !== this.drawing?.body;
    this.drawing = drawing;
    const svg = this.querySelector('svg');
    if (svg) {
      svg.setAttribute('viewBox', `0 0 ${drawing.width} ${drawing.height}`);
      svg.setAttribute('width', String(drawing.width));
      svg.setAttribute('height', String(drawing.height));
      svg.setAttribute('aria-label', drawing.label);
      rewrite(svg, drawing.body);
    }
    if (this.table && isNew) this.requestUpdate();
    const handle = this.querySelector<HTMLElement>('.handle');
    if (handle && drawing.handle) {
      handle.hidden = false;
      handle.style.left = `${drawing.handle.x}px`;
      handle.style.top = `${drawing.handle.y}px`;
      if (figure.crank) this.speak(handle, drawing.label);
    }
    this.dispatchEvent(new CustomEvent('drawn', { detail: drawing.label }));
  };
  /** What the form is given; null while there is nothing to draw. */
  protected values(): object | null {
    return formValues(this.store, this.figure, this.overlay);
  }
  /** The crank's place is no part of the notebook, so that the element is not updated when it turns. */
  private speak(handle: HTMLElement, label: string): void {
    const hold = this.hold!;
    handle.setAttribute('aria-valuenow', hold.shown(hold.now!).figure);
    handle.setAttribute('aria-valuetext', label);
  }

  private get hold(): Hold | null {
    const { figure, store, gesture } = this;
    if (figure.crank === 'turns') return crankHold(store);
    return figure.moves ? holdOf(store, figure.moves, gesture) : null;
  }
  /** Where the drawing's corner was when it was taken hold of: what is said above may grow and push the figure down. */
  private corner = { x: 0, y: 0 };
  private take(event: PointerEvent): void {
    const { handle } = this.drawing ?? {};
    if (!handle) return;
    (event.target as HTMLElement).setPointerCapture(event.pointerId);
    this.corner = { x: event.clientX - handle.x, y: event.clientY - handle.y };
    this.gesture.begin();
  }
  private drag(event: PointerEvent): void {
    if (this.drawing?.handle)
      this.hold?.put(this.drawing.handle.valueAt(event.clientX - this.corner.x, event.clientY - this.corner.y));
  }
  private press(event: KeyboardEvent): void {
    const steps = stepsOf(event);
    const { hold } = this;
    if (steps === 0 || hold?.now === undefined) return;
    event.preventDefault();
    hold.put(hold.now + steps * hold.step);
  }

  protected override render(): TemplateResult {
    const { figure, store, drawing } = this;
    const { states } = this;
    const fault = states.find((s) => s.is === 'fault');
    const waits = !fault && states.some((s) => s.is === 'waiting');
    const isThere = states.every((s) => lastGood(s) !== undefined);
    return html`<figure class="fig" id=${figure.id}>
      ${this.head()} ${fault?.is === 'fault' ? waitsFor(store, fault.fault.about, isThere) : nothing}
      ${waits ? html`<p class="stale-note">${isThere ? workedAnew : 'Being worked out.'}</p>` : nothing}
      <div class="frame ${fault || waits ? 'stale' : ''} ${isThere ? '' : 'empty'}">
        ${this.table && drawing ? twinTable(figure.caption, drawing.twin) : html`<svg role="img" aria-label="Not drawn yet"></svg>${this.handle()}`}
      </div>
      ${this.overlay.isNear ? toCome(store, figure) : nothing}
      <figcaption>${this.number > 0 ? html`<b>Figure ${this.number}.</b> ` : nothing}${figure.caption}</figcaption>
      ${figureTools(this, { title: figure.caption, twin: () => this.drawing?.twin ?? { columns: [], rows: [] } })}
    </figure>`;
  }
  /** Where what it is drawn from stands. */
  protected get states(): readonly State[] {
    return Object.values(this.figure.from).map((c) => this.store.state(c));
  }
  /** What stands over it. */
  protected head(): TemplateResult | typeof nothing {
    return nothing;
  }
  private handle(): TemplateResult | typeof nothing {
    const { hold } = this;
    if (!hold) return nothing;
    const { label, low, high, now, shown } = hold;
    return html`<div
      class="handle free"
      hidden
      role="slider"
      tabindex="0"
      aria-label="${label}, on the figure"
      aria-valuemin=${shown(low).figure}
      aria-valuemax=${shown(high).figure}
      aria-valuenow=${now === undefined ? 0 : shown(now).figure}
      aria-valuetext=${now === undefined ? '' : shown(now).words}
      @keydown=${(e: KeyboardEvent) => this.press(e)}
      @pointerdown=${(e: PointerEvent) => this.take(e)}
      @pointermove=${(e: PointerEvent) => this.gesture.now && this.drag(e)}
      @pointerup=${() => this.gesture.end()}
      @pointercancel=${() => this.gesture.end()}
    ></div>`;
  }
}
customElements.define('drawn-figure', DrawnFigure);
declare global {
  interface HTMLElementTagNameMap {
    'drawn-figure': DrawnFigure;
  }
}
