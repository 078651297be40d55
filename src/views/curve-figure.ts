import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { Curve, CurveKind } from '../graph/kind.ts';
import { lastGood } from '../graph/state.ts';
import { extent, type LineFigure, withRoom } from '../plots/line-figure.ts';
import type { Quantity } from '../units/quantity.ts';
import { toUnit } from '../units/unit.ts';
import { Piece } from './piece.ts';
import { when } from './words.ts';
import './line-plot.ts';

/** <curve-figure>: a curve that a cell computed. */
export class CurveFigure extends Piece {
  static override properties = { ...Piece.properties, cell: { attribute: false } };
  declare cell: Exclude<Cell, { role: 'input' }>;

  protected override watched(): readonly Cell[] {
    return [this.cell];
  }
  protected override render(): TemplateResult {
    const { cell, store } = this;
    const state = store.state(cell);
    const curve = lastGood(state) as Curve | undefined;
    const stale = state.is === 'fault' || state.is === 'waiting';
    return html`<figure class="fig" id="figure-${cell.id}">
      ${when(stale && curve, () => html`<p class="stale-note">Being worked out anew; this is the last good figure.</p>`)}
      <div class=${stale ? 'stale' : ''}>
        ${curve ? html`<line-plot .figure=${this.figure(curve)}></line-plot>` : nothing}
      </div>
      <figcaption>${cell.note}</figcaption>
    </figure>`;
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
    const [xs, ys] = [show(kind.x, curve.x), show(kind.y, curve.y)];
    const { symbol } = kind.y[system].unit;
    return {
      label: `${cell.label}: ${cell.kind.text(curve, system)}.`,
      x: { title: 'Crank angle from firing top dead center', domain: extent([xs]) ?? [0, 1], text: text(kind.x) },
      y: {
        title: symbol ? `${cell.label}, ${symbol}` : cell.label,
        domain: withRoom(extent([ys]) ?? [0, 1]),
        text: text(kind.y),
      },
      lines: [{ name: '', xs, ys, present: true }],
      bands: [],
      mark: null,
    };
  }
}
customElements.define('curve-figure', CurveFigure);
declare global {
  interface HTMLElementTagNameMap {
    'curve-figure': CurveFigure;
  }
}
