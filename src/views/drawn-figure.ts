import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { ChapterFigure } from '../graph/chapter.ts';
import { Impossible, lastGood } from '../graph/state.ts';
import type { Drawing } from '../plots/drawing.ts';
import { fromUnit, tidy, toUnit } from '../units/unit.ts';
import { figureTools, waitsFor } from './figure-parts.ts';
import { onFrame } from './frame.ts';
import { Gesture } from './gesture.ts';
import { stepsOf } from './keys.ts';
import { Piece } from './piece.ts';
import { rewrite } from './rewrite.ts';
import { Sight } from './sight.ts';
import { figureOf, lower, shownOf, spoken } from './words.ts';
import { twinTable } from './figure-tools.ts';

let made = 0;
type Forms = typeof import('../plots/forms.ts').forms;
/** Drawings load behind the first readouts. */
let forms: Forms | undefined;

/** <drawn-figure>: a figure that a chapter declares, drawn by its form; a handle on it moves a cell. */
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
  protected override watched(): readonly Cell[] {
    const { from, plusMinus } = this.figure;
    return [...Object.values(from), ...(plusMinus ? [plusMinus] : [])];
  }
  protected override updated(): void {
    onFrame(this.draw);
  }

  private readonly draw = (): void => {
    const { room: width } = this.sight;
    if (width === null) return;
    if (!forms) {
      void import('../plots/forms.ts').then((loaded) => {
        forms = loaded.forms;
        onFrame(this.draw);
      });
      return;
    }
    const { figure, store } = this;
    const entries = Object.entries(figure.from).map(([name, cell]) => [name, lastGood(store.state(cell))] as const);
    if (entries.some(([, value]) => value === undefined)) return;
    const values = {
      ...Object.fromEntries(entries),
      ...(figure.plusMinus ? { plusMinus: store.spread(figure.plusMinus)?.plusMinus ?? 0 } : {}),
    };
    const drawing = forms[figure.form]!(values as never, {
      width,
      system: store.system,
      id: this.patternId,
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
    }
  };

  private move(si: number): void {
    const { moves } = this.figure;
    if (!moves) return;
    const { store } = this;
    const { unit, step } = shownOf(store, moves);
    const [low, high] = moves.slider ?? [-Infinity, Infinity];
    const held = Math.min(high, Math.max(low, fromUnit(Math.round(toUnit(si, unit) / step) * step, unit)));
    try {
      store.put(moves, tidy(held), {
        what: `Set ${lower(moves.label)} to ${figureOf(store, moves, held)}`,
        place: moves.id,
        gesture: this.gesture.now ?? this.gesture.key,
      });
    } catch (error) {
      if (!(error instanceof Impossible)) throw error; // it stays where it can be
    }
  }
  /** Where the drawing's corner was when it was taken hold of: what is said above may grow and push the figure down. */
  private corner = { x: 0, y: 0 };
  private hold(event: PointerEvent): void {
    const { handle } = this.drawing ?? {};
    if (!handle) return;
    (event.target as HTMLElement).setPointerCapture(event.pointerId);
    this.corner = { x: event.clientX - handle.x, y: event.clientY - handle.y };
    this.gesture.begin();
  }
  private drag(event: PointerEvent): void {
    if (this.drawing?.handle)
      this.move(this.drawing.handle.valueAt(event.clientX - this.corner.x, event.clientY - this.corner.y));
  }
  private press(event: KeyboardEvent): void {
    const steps = stepsOf(event);
    const { moves } = this.figure;
    const now = moves ? lastGood(this.store.state(moves)) : undefined;
    if (steps === 0 || !moves || typeof now !== 'number') return;
    event.preventDefault();
    const { unit, step } = shownOf(this.store, moves);
    this.move(fromUnit(toUnit(now, unit) + steps * step, unit));
  }

  protected override render(): TemplateResult {
    const { figure, store, drawing } = this;
    const fault = Object.values(figure.from)
      .map((c) => store.state(c))
      .find((s) => s.is === 'fault');
    return html`<figure class="fig" id=${figure.id}>
      ${fault?.is === 'fault' ? waitsFor(store, fault.fault.about) : nothing}
      <div class="frame ${fault ? 'stale' : ''}">
        ${this.table && drawing ? twinTable(figure.caption, drawing.twin) : html`<svg role="img" aria-label=""></svg>${this.handle()}`}
      </div>
      <figcaption><b>Figure ${this.number}.</b> ${figure.caption}</figcaption>
      ${figureTools(this, { title: figure.caption, twin: () => this.drawing?.twin ?? { columns: [], rows: [] } })}
    </figure>`;
  }
  private handle(): TemplateResult | typeof nothing {
    const { moves } = this.figure;
    if (!moves) return nothing;
    const { store } = this;
    const now = lastGood(store.state(moves));
    const [low, high] = moves.slider!;
    const figure = (si: number): string => figureOf(store, moves, si);
    return html`<div
      class="handle free"
      hidden
      role="slider"
      tabindex="0"
      aria-label="${moves.label}, on the figure"
      aria-valuemin=${figure(low)}
      aria-valuemax=${figure(high)}
      aria-valuenow=${typeof now === 'number' ? figure(now) : 0}
      aria-valuetext=${typeof now === 'number' ? spoken(store, moves, now) : ''}
      @keydown=${(e: KeyboardEvent) => this.press(e)}
      @pointerdown=${(e: PointerEvent) => this.hold(e)}
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
