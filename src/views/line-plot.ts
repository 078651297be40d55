import { drag } from 'd3-drag';
import { select } from 'd3-selection';
import { html, LitElement, type TemplateResult } from 'lit';
import { axes, sizeOf } from '../plots/axes.ts';
import { escape, lined, patterns, tag, text } from '../plots/drawing.ts';
import { type Line, type LineFigure, spacedOut } from '../plots/line-figure.ts';
import { bandPath, lineDots, linePath } from '../plots/paths.ts';
import { strokeOf } from '../plots/variants.ts';
import { onFrame } from './frame.ts';
import { stepsOf } from './keys.ts';
import { rewrite } from './rewrite.ts';
import { Sight } from './sight.ts';

type Plotted = (SVGSVGElement | HTMLElement) & {
  scale(name: string): { apply(v: number): number; invert(v: number): number; domain: number[] } | undefined;
};
const svgNs = 'http://www.w3.org/2000/svg';
let plots = 0;
/** Plot is large and nothing on the first screen needs it: it loads behind the first readouts. */
let plot: typeof import('@observablehq/plot') | undefined;

/**
 * <line-plot>: draws a LineFigure. Plot draws axes, again only when domain, size or names change; lines, bands and the
 * mark are rewritten in place, once a frame, while it can be seen. The mark is an HTML slider over the picture.
 * Sends "mark-move" with the new x while it is dragged or stepped, "mark-start" and "mark-end" around a drag.
 */
export class LinePlot extends LitElement {
  static override properties = {
    figure: { attribute: false },
    tall: { type: Boolean },
    step: { type: Number },
    now: { attribute: false },
    markLabel: {},
    markText: {},
  };
  declare figure: LineFigure;
  declare tall: boolean;
  /** Where the mark stands by now, in the unit of x: keys may come faster than frames. */
  declare now: (() => number) | undefined;
  /** What one arrow key is worth, in the unit of x. */
  declare step: number;
  declare markLabel: string;
  declare markText: string;
  private key = '';
  private svg: Plotted | undefined;
  /** The axes' figures and where they stand. */
  private ticks: readonly Tick[] = [];
  private dragging = false;
  private readonly patternId = `plot${++plots}`;
  private readonly sight = new Sight(
    this,
    () => this,
    () => this.draw(),
  );

  constructor() {
    super();
    this.tall = false;
    this.step = 1;
    this.markLabel = '';
    this.markText = '';
  }
  protected override createRenderRoot(): HTMLElement {
    return this;
  }
  protected override render(): TemplateResult {
    const { mark, x } = this.figure;
    const movable = mark?.movable === true;
    return html`<div class="frame">
      <div class="picture"></div>
      <div
        class="handle"
        ?hidden=${!movable}
        role="slider"
        tabindex=${movable ? 0 : -1}
        aria-label=${this.markLabel}
        aria-valuemin=${Math.min(...x.domain)}
        aria-valuemax=${Math.max(...x.domain)}
        aria-valuenow=${mark?.x ?? 0}
        aria-valuetext=${this.markText}
        @keydown=${(e: KeyboardEvent) => this.press(e)}
      ></div>
    </div>`;
  }
  protected override firstUpdated(): void {
    const frame = this.querySelector<HTMLElement>('.frame')!;
    const handle = select<HTMLElement, unknown>(this.querySelector<HTMLElement>('.handle')!);
    handle.call(
      drag<HTMLElement, unknown>()
        .container(() => frame)
        .subject(() => ({ x: handle.node()!.offsetLeft + 22, y: 0 }))
        .on('start', () => this.say('mark-start'))
        .on('drag', (event: { x: number }) => this.moveTo(event.x))
        .on('end', () => this.say('mark-end')),
    );
  }
  protected override updated(): void {
    onFrame(this.draw);
  }
  private say(type: string, detail?: number): void {
    this.dragging = type === 'mark-start' || (this.dragging && type !== 'mark-end');
    this.dispatchEvent(new CustomEvent(type, { detail }));
  }
  private moveTo(px: number): void {
    const scale = this.svg?.scale('x');
    if (!scale) return;
    const [a, b] = this.figure.x.domain;
    const wanted = Math.round(scale.invert(px) / this.step) * this.step;
    this.say('mark-move', Math.min(Math.max(a, b), Math.max(Math.min(a, b), wanted)));
  }
  private press(event: KeyboardEvent): void {
    const by = stepsOf(event);
    const { mark, x } = this.figure;
    if (by === 0 || !mark) return;
    event.preventDefault();
    const at = (this.now?.() ?? mark.x) / this.step;
    const next = (by > 0 ? Math.floor(at + 1e-6) : Math.ceil(at - 1e-6)) + by;
    this.say('mark-move', Math.min(Math.max(...x.domain), Math.max(Math.min(...x.domain), next * this.step)));
  }

  private readonly draw = (): void => {
    const { room } = this.sight;
    if (room === null) return;
    if (plot) this.drawNow(plot, room);
    else
      void import('@observablehq/plot').then((loaded) => {
        plot = loaded;
        onFrame(this.draw);
      });
  };
  private drawNow(plot: typeof import('@observablehq/plot'), width: number): void {
    const { figure } = this;
    const size = sizeOf(figure, width, this.tall);
    const key = JSON.stringify([
      size,
      figure.x.domain,
      figure.y.domain,
      figure.x.title,
      figure.y.title,
      figure.y.text(1),
    ]);
    const picture = this.querySelector('.picture');
    if (!picture) return;
    if (key !== this.key || !this.svg) {
      this.key = key;
      const svg = plot.plot(axes(figure, size, plot)) as Plotted;
      svg.setAttribute('role', 'img');
      for (const group of svg.querySelectorAll('[aria-label], [aria-hidden]')) group.removeAttribute('aria-label');
      svg.insertAdjacentHTML('afterbegin', patterns(this.patternId));
      for (const name of ['bands', 'lines', 'marks']) {
        const group = document.createElementNS(svgNs, 'g');
        group.setAttribute('class', name);
        svg.append(group);
      }
      // Bands lie under the axes' text.
      svg.insertBefore(svg.querySelector('.bands')!, svg.querySelector('defs')!.nextSibling);
      picture.replaceChildren(svg);
      this.svg = svg;
      this.ticks = ticksOf(svg);
    }
    this.svg.setAttribute('aria-label', figure.label);
    this.fill(this.svg, size);
  }

  private fill(svg: Plotted, size: ReturnType<typeof sizeOf>): void {
    const { figure } = this;
    const [sx, sy] = [svg.scale('x')!, svg.scale('y')!];
    const x = (v: number): number => sx.apply(v);
    const y = (v: number): number => sy.apply(v);
    const [top, bottom, left, right] = [
      size.marginTop,
      size.height - size.marginBottom,
      size.marginLeft,
      size.width - size.marginRight,
    ];
    const bands = figure.bands
      .map((band) =>
        band.tone === 'comfortable'
          ? ''
          : `<path d="${bandPath(band, x, y, [top, bottom])}" ${lined(band.tone, { id: this.patternId })} stroke="var(--${band.tone === 'beyond' ? 'beyond' : 'border'})" stroke-opacity=".6"/>`,
      )
      .join('');
    rewrite(svg.querySelector('.bands')!, bands);
    const others = figure.lines.filter((l) => !l.present);
    // Over the lines of other variants lie those of the figure's own, over these the present one.
    const own = figure.lines.find((l) => l.present)?.variant;
    const depth = (l: Line): number => (l.present ? 2 : l.variant === own ? 1 : 0);
    const lines = figure.lines
      .toSorted((a, b) => depth(a) - depth(b))
      .map((l) => {
        const d = linePath(l, x, y);
        const width = l.present ? 2.75 : 1.75;
        const color = `var(--l${l.ink ?? (l.present ? 1 : 2 + (others.indexOf(l) % 4))})`;
        return `<path d="${d}" fill="none" stroke="var(--paper)" stroke-width="${width + 2.5}" opacity=".7"/><path d="${d}" fill="none" stroke="${color}" ${strokeOf(l.variant ?? 0, width)}/>${lineDots(l, x, y, color)}`;
      })
      .join('');
    rewrite(svg.querySelector('.lines')!, lines);
    rewrite(svg.querySelector('.marks')!, this.words(x, y, { top, bottom, left, right, size }));
    this.place(x, y, bottom);
  }

  private words(
    x: (v: number) => number,
    y: (v: number) => number,
    at: { top: number; bottom: number; left: number; right: number; size: { width: number; height: number } },
  ): string {
    const { figure } = this;
    const { mark, cursor } = figure;
    const [mx, my] = mark ? [x(mark.x), y(mark.y)] : [0, 0];
    const parts = [
      // Under the words, whose halo parts it.
      mark
        ? `<path class="hair" d="M${mx.toFixed(1)} ${my.toFixed(1)}V${at.bottom}M${at.left} ${my.toFixed(1)}H${mx.toFixed(1)}"/>`
        : '',
      `<path class="axis" d="M${at.left} ${at.bottom}H${at.right}"/>`,
      text(0, 14, figure.y.title),
      text(at.right, at.size.height - 6, figure.x.title, 'end'),
    ];
    for (const band of figure.bands) {
      const end = band.tone !== 'beyond';
      const i = end ? 0 : band.xs.length - 1;
      const high = band.high ? y(band.high[i]!) : at.top;
      const low = band.low ? y(band.low[i]!) : at.bottom;
      const [a, b] = [Math.max(at.top, Math.min(high, low)), Math.min(at.bottom, Math.max(high, low))];
      if (b - a < 18) continue;
      const place = band.tone === 'comfortable' ? a + 22 : band.tone === 'beyond' ? a + 20 : b - 8;
      const [fill, halo] = {
        comfortable: ['ink-2', 'paper'],
        borderline: ['border', 'border-fill'],
        beyond: ['beyond', 'beyond-fill'],
      }[band.tone] as [string, string];
      parts.push(tag(end ? at.left + 10 : at.right - 10, place, band.label, fill, halo, end ? 'start' : 'end'));
    }
    for (const rule of figure.rules) {
      const edge = linePath({ ...rule, name: '', present: false }, x, (v) =>
        Math.min(at.bottom, Math.max(at.top, y(v))),
      );
      parts.push(
        `<path d="${edge}" fill="none" stroke="var(--ink-2)" stroke-dasharray="6 4"/>`,
        `<text x="${at.right - 10}" y="${(Math.min(at.bottom, Math.max(at.top + 17, y(rule.ys[rule.ys.length - 1]!))) - 5).toFixed(1)}" text-anchor="end" style="fill:var(--ink-2);paint-order:stroke;stroke:var(--paper);stroke-width:4px">${escape(rule.label)}</text>`,
      );
    }
    const ends = figure.lines.map((l) => lastFinite(l.ys));
    const places = spacedOut(
      ends.map((i, k) => (i < 0 ? at.bottom : Math.min(at.bottom, Math.max(at.top, y(figure.lines[k]!.ys[i]!))))),
      16,
      at.bottom,
    );
    figure.lines.forEach((l, k) => {
      if (ends[k]! >= 0 && l.name !== '')
        parts.push(text(at.right + 8, places[k]! + 4.5, l.name, 'start', l.present ? 'strong' : ''));
    });
    if (cursor !== undefined) parts.push(`<path class="cursor" d="M${x(cursor).toFixed(1)} ${at.top}V${at.bottom}"/>`);
    if (mark)
      parts.push(
        `<circle cx="${mx.toFixed(1)}" cy="${my.toFixed(1)}" r="5" fill="var(--hand)"/>`,
        text(at.left - 8, my + 4.5, figure.y.text(mark.y), 'end', 'hand'),
        text(mx, at.bottom + 22.5, figure.x.text(mark.x), 'middle', 'hand'),
      );
    return parts.join('');
  }

  /** Moves the slider onto the mark, and takes away the tick figures that the mark's own stand on. */
  private place(x: (v: number) => number, y: (v: number) => number, bottom: number): void {
    const { mark } = this.figure;
    const handle = this.querySelector<HTMLElement>('.handle')!;
    for (const { text: tick, px, py } of this.ticks) {
      const hides = mark && (py > bottom - 1 ? Math.abs(px - x(mark.x)) < 30 : Math.abs(py - y(mark.y)) < 13);
      tick.style.visibility = hides ? 'hidden' : '';
    }
    if (!mark) return;
    handle.style.left = `${x(mark.x)}px`;
    handle.style.top = `${y(mark.y)}px`;
  }
}

interface Tick {
  readonly text: SVGTextElement;
  readonly px: number;
  readonly py: number;
}
function ticksOf(svg: Plotted): readonly Tick[] {
  return Array.from(svg.querySelectorAll<SVGTextElement>('text')).flatMap((text) => {
    const { transform } = text;
    const place = transform.baseVal.numberOfItems > 0 ? transform.baseVal.consolidate()?.matrix : undefined;
    return place ? [{ text, px: place.e, py: place.f }] : [];
  });
}

function lastFinite(ys: ArrayLike<number>): number {
  let i = ys.length - 1;
  while (i >= 0 && !Number.isFinite(ys[i]!)) i--;
  return i;
}
customElements.define('line-plot', LinePlot);
declare global {
  interface HTMLElementTagNameMap {
    'line-plot': LinePlot;
  }
}
