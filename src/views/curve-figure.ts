import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { Curve, CurveKind } from '../graph/kind.ts';
import { lastGood } from '../graph/state.ts';
import { extent, type LineFigure, twinOf, withRoom } from '../plots/line-figure.ts';
import { angle, type Quantity } from '../units/quantity.ts';
import { toUnit } from '../units/unit.ts';
import { figureTools, waitsFor, workedAnew } from './figure-parts.ts';
import { twinTable } from './figure-tools.ts';
import { crank } from './crank.ts';
import { onFrame } from './frame.ts';
import { Overlay } from './overlay.ts';
import { Piece } from './piece.ts';
import { plots } from './plots.ts';
import './line-plot.ts';

/** <curve-figure>: a curve that a cell computed. */
export class CurveFigure extends Piece {
  static override properties = {
    ...Piece.properties,
    cell: { attribute: false },
    number: { type: Number },
    table: { state: true },
  };
  declare cell: Exclude<Cell, { role: 'input' }>;
  declare number: number;
  declare table: boolean;
  private readonly overlay = new Overlay(this, { cells: () => [this.cell] });

  constructor() {
    super();
    this.number = 0;
    this.table = false;
  }

  private unwatchCrank: (() => void) | undefined;
  private readonly follow = (): void => this.requestUpdate();
  override connectedCallback(): void {
    super.connectedCallback();
    this.unwatchCrank = crank.watch(() => onFrame(this.follow));
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatchCrank?.();
  }
  protected override watched(): readonly Cell[] {
    return [this.cell];
  }
  protected override render(): TemplateResult {
    const { cell, store } = this;
    const state = store.state(cell);
    const curve = lastGood(state) as Curve | undefined;
    const figure = curve ? this.figure(curve) : null;
    const stale = state.is === 'fault' || state.is === 'waiting';
    return html`<figure class="fig" id="figure-${cell.id}">
      ${state.is === 'fault' && curve ? waitsFor(store, state.fault.about) : nothing}
      ${state.is === 'waiting' && curve ? html`<p class="stale-note">${workedAnew}</p>` : nothing}
      <div class="frame low ${stale ? 'stale' : ''}">
        ${figure && !this.table ? plots(store, figure, (one) => html`<line-plot .figure=${one}></line-plot>`) : nothing}
        ${figure && this.table ? twinTable(cell.label, twinOf(figure)) : nothing}
      </div>
      <figcaption><b>Figure ${this.number}.</b> ${cell.note}</figcaption>
      ${figure ? figureTools(this, { title: cell.label, twin: () => twinOf(figure) }) : nothing}
    </figure>`;
  }
  private line(curve: Curve) {
    const { self, others } = this.overlay;
    const name = others.length > 0 ? (self?.name ?? '') : '';
    return { name, curve, present: true, variant: others.length > 0 ? (self?.place ?? 0) : 0 };
  }
  private others() {
    const { cell, store } = this;
    return this.overlay.others.flatMap(({ id, name, place }) => {
      const curve = lastGood(store.others!.state(id, cell)) as Curve | undefined;
      return curve ? [{ name, curve, present: false, variant: place }] : [];
    });
  }
  private figure(curve: Curve): LineFigure {
    const { cell, store } = this;
    const kind = cell.kind as unknown as CurveKind;
    const system = store.systemOf(cell);
    const show = (quantity: Quantity, values: Float64Array): number[] =>
      Array.from(values, (v) => toUnit(v, quantity[system].unit));
    const text =
      (quantity: Quantity) =>
      (v: number): string => {
        const { unit, digits } = quantity[system];
        return `${String(Number(v.toFixed(digits))).replace('-', '−')}${unit.symbol === '°' ? '°' : ''}`;
      };
    const lines = [this.line(curve), ...this.others()].map(({ curve: { x, y }, ...line }) => ({
      ...line,
      xs: show(kind.x, x),
      ys: show(kind.y, y),
    }));
    const { symbol } = kind.y[system].unit;
    return {
      label: `${cell.label}: ${cell.kind.text(curve, system)}.`,
      x: {
        title: `${kind.along}${kind.x[system].unit.symbol === '°' ? '' : `, ${kind.x[system].unit.symbol}`}`,
        domain: extent(lines.map((l) => l.xs)) ?? [0, 1],
        text: text(kind.x),
      },
      y: {
        title: symbol ? `${cell.label}, ${symbol}` : cell.label,
        domain: withRoom(extent(lines.map((l) => l.ys)) ?? [0, 1]),
        text: text(kind.y),
      },
      lines,
      bands: [],
      rules: [],
      mark: null,
      ...cursorOn(kind, curve, (a) => toUnit(a, kind.x[system].unit)),
    };
  }
}
/** The page's crank, where it stands within the curve. */
function cursorOn(kind: CurveKind, { x }: Curve, show: (angle: number) => number): { readonly cursor?: number } {
  if (crank.angle === undefined || kind.x !== angle) return {};
  const at = [crank.angle - 4 * Math.PI, crank.angle].find((a) => a >= x[0]! && a <= x.at(-1)!);
  return at === undefined ? {} : { cursor: show(at) };
}
customElements.define('curve-figure', CurveFigure);
declare global {
  interface HTMLElementTagNameMap {
    'curve-figure': CurveFigure;
  }
}
