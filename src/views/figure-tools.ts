import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { csv } from '../exports/csv.ts';
import { standalone } from '../exports/svg.ts';
import type { Twin } from '../plots/drawing.ts';
import { fileName, saveFile } from './files.ts';

/** What the tools of a figure work on. */
export interface Shelf {
  readonly title: string;
  readonly twin: Twin;
}

const isFirst = (_: unknown, before: unknown): boolean => before === undefined;

/** <figure-tools>: the table twin in the figure's place, and the figure as SVG or its rows as CSV. */
export class FigureTools extends LitElement {
  // What a tool works on is asked for when it is used: a new closure is no reason to draw anew.
  static override properties = {
    shelf: { attribute: false, hasChanged: isFirst },
    picture: { attribute: false, hasChanged: isFirst },
    table: { type: Boolean },
  };
  declare shelf: () => Shelf;
  /** The svg on the page, or null while a table stands there. */
  declare picture: () => SVGSVGElement | null;
  declare table: boolean;

  constructor() {
    super();
    this.table = false;
  }
  protected override createRenderRoot(): HTMLElement {
    return this;
  }
  protected override render(): TemplateResult {
    return html`<div class="figtools">
      <button aria-pressed=${this.table} @click=${() => this.dispatchEvent(new CustomEvent('table'))}>
        ${this.table ? 'Figure' : 'Table'}
      </button>
      ${this.table ? nothing : html`<button @click=${() => this.svg()}>SVG</button>`}
      <button @click=${() => this.csv()}>CSV</button>
    </div>`;
  }
  private svg(): void {
    const picture = this.picture();
    if (!picture) return;
    const { width, height } = picture.viewBox.baseVal;
    const style = getComputedStyle(this);
    const { title } = this.shelf();
    saveFile(
      `${nameOf(title)}.svg`,
      standalone({ width, height, body: picture.innerHTML, title }, (name) =>
        style.getPropertyValue(`--${name}`).trim(),
      ),
      'image/svg+xml',
    );
  }
  private csv(): void {
    const { title, twin } = this.shelf();
    saveFile(`${nameOf(title)}.csv`, csv(title, twin.columns, twin.rows), 'text/csv');
  }
}

const nameOf = (title: string): string => fileName(title, 'figure').slice(0, 60);

/** The table twin of a figure, in its place. */
export const twinTable = (title: string, { columns, rows }: Twin): TemplateResult =>
  html`<div class="tablewrap" tabindex="0" role="region" aria-label=${title}>
    <table>
      <caption>
        ${title}
      </caption>
      <thead>
        <tr>
          ${columns.map((c) => html`<th scope="col">${c}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ([first, ...rest]) =>
            html`<tr>
              <th scope="row">${first}</th>
              ${rest.map((cell) => html`<td>${cell}</td>`)}
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
customElements.define('figure-tools', FigureTools);
declare global {
  interface HTMLElementTagNameMap {
    'figure-tools': FigureTools;
  }
}
