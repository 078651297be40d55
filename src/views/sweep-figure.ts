import { html, nothing, type TemplateResult } from 'lit';
import type { Explorer } from '../graph/explorer.ts';
import { Impossible } from '../graph/state.ts';
import type { Snapshot } from '../graph/snapshot.ts';
import { NotSettled } from '../graph/snapshot.ts';
import type { SweepResult } from '../graph/sweep.ts';
import type { SweepItem } from '../notebook/document.ts';
import { isSlow, type Question, questionOf, sweepNow, taskOf } from '../notebook/sweeps.ts';
import type { LineFigure } from '../plots/line-figure.ts';
import { say } from '../units/phrase.ts';
import { fromUnit, tidy } from '../units/unit.ts';
import { onFrame } from './frame.ts';
import { Gesture } from './gesture.ts';
import { Piece } from './piece.ts';
import { sweepFigure } from './sweep-data.ts';
import { figureOf, lower, shownOf, spokenUnit, when } from './words.ts';
import './line-plot.ts';
import './sweep-sentence.ts';

/** <sweep-figure>: a sweep's sentence and its figure; its mark moves the input. */
export class SweepFigure extends Piece {
  static override properties = {
    ...Piece.properties,
    item: { attribute: false },
    explorer: { attribute: false },
    table: { state: true },
    note: { state: true },
    done: { state: true },
  };
  declare item: SweepItem;
  declare explorer: Explorer | null;
  declare table: boolean;
  /** Why the figure is not of the present. */
  declare note: TemplateResult | string | null;
  /** Share of a slow sweep that is done; null when none runs. */
  declare done: number | null;
  private figure: LineFigure | null = null;
  private domain: readonly [number, number] | null = null;
  private readonly gesture = new Gesture();
  private unwatchAll: (() => void) | undefined;
  private job: { readonly key: string; readonly stop: () => void } | null = null;
  private found: { readonly key: string; readonly result: SweepResult } | null = null;

  constructor() {
    super();
    this.table = false;
    this.note = null;
    this.done = null;
    this.explorer = null;
  }
  override connectedCallback(): void {
    super.connectedCallback();
    // A sweep can stand on anything: it is drawn anew, at most once a frame, after any change.
    this.unwatchAll = this.store.watchAll(() => onFrame(this.renew));
    onFrame(this.renew);
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatchAll?.();
    this.job?.stop();
    this.job = null;
  }
  protected override watched(): readonly import('../graph/cell.ts').Cell[] {
    const { read, vary } = questionOf(this.item, this.store.catalogue);
    return read.role === 'slow' ? [vary] : [read, vary];
  }
  /** True while a slow sweep is being worked on. */
  get busy(): boolean {
    return this.job !== null;
  }

  private readonly renew = (): void => {
    if (!this.isConnected) return;
    const { store } = this;
    const question = questionOf(this.item, store.catalogue);
    try {
      const at = store.snapshot();
      if (isSlow(at, question)) this.renewSlowly(question);
      else this.show(at, question, sweepNow(at, question));
    } catch (error) {
      if (!(error instanceof NotSettled)) throw error;
      this.note = html`Waits for <a href="#${error.cell.id}">${lower(error.cell.label)}</a>. This is the last good
        figure.`;
    }
    this.requestUpdate();
  };
  private show(at: Snapshot, question: Question, found: SweepResult): void {
    const dragging = this.gesture.now !== undefined;
    this.figure = sweepFigure(this.store, at, question, found, this.domain);
    if (!dragging) this.domain = this.figure.y.domain;
    else this.figure = { ...this.figure, y: { ...this.figure.y, domain: this.domain ?? this.figure.y.domain } };
    this.note = null;
  }
  private renewSlowly(question: Question): void {
    const task = taskOf(this.store, question);
    const key = JSON.stringify(task);
    if (this.found?.key === key) return this.show(this.store.snapshot(), question, this.found.result);
    if (this.job?.key === key) return;
    this.job?.stop();
    this.job = null;
    if (!this.explorer) return;
    this.done = 0;
    const end = (): void => {
      this.job = null;
      this.done = null;
    };
    const stop = this.explorer.sweep(task, (news) => {
      if (news.is === 'waiting') this.done = news.done;
      else if (news.is === 'fault') {
        end();
        this.note = say(news.message, this.store.system);
      } else {
        end();
        this.found = { key, result: news.result };
        onFrame(this.renew);
      }
    });
    this.job = { key, stop };
  }

  private move(x: number): void {
    const { store } = this;
    const { vary } = questionOf(this.item, store.catalogue);
    const { unit } = shownOf(store, vary);
    try {
      store.put(vary, tidy(fromUnit(x, unit)), {
        what: `Set ${lower(vary.label)} to ${figureOf(store, vary, fromUnit(x, unit))}`,
        place: vary.id,
        gesture: this.gesture.now ?? this.gesture.key,
      });
    } catch (error) {
      if (!(error instanceof Impossible)) throw error; // it stays where it can be
    }
  }

  protected override render(): TemplateResult {
    const { store, item, figure } = this;
    const { vary, read } = questionOf(item, store.catalogue);
    const shown = shownOf(store, vary);
    const said = figure?.mark
      ? `${figureOf(store, vary, fromUnit(figure.mark.x, shown.unit))} ${spokenUnit(store, vary)}, ${lower(read.label)} ${figureOf(store, read, fromUnit(figure.mark.y, shownOf(store, read).unit))}`
      : '';
    return html`<figure class="fig" id=${item.id}>
      <sweep-sentence .store=${store} .item=${item}></sweep-sentence>
      ${when(this.note, () => html`<p class="stale-note">${this.note}</p>`)}
      ${when(
        this.done !== null,
        () =>
          html`<div class="bar" style="--done:${Math.round(this.done! * 100)}%"></div>
            <p class="stale-note">Working it out: ${Math.round(this.done! * 100)} %.</p>`,
      )}
      <div class=${this.note || this.done !== null ? 'stale' : ''}>
        ${
          figure && !this.table
            ? html`<line-plot
                .figure=${figure}
                .tall=${true}
                .step=${shown.step}
                .markLabel=${`${vary.label}, on the figure`}
                .markText=${said}
                @mark-start=${() => this.gesture.begin()}
                @mark-end=${() => this.ended()}
                @mark-move=${(e: CustomEvent<number>) => this.move(e.detail)}
              ></line-plot>`
            : nothing
        }
        ${figure && this.table ? this.tableOf(figure) : nothing}
      </div>
      <div class="figtools">
        <button aria-pressed=${this.table} @click=${() => (this.table = !this.table)}>
          ${this.table ? 'Figure' : 'Table'}
        </button>
        <button aria-label="Remove this sweep" @click=${() => this.removeItem()}>Remove</button>
      </div>
    </figure>`;
  }
  private ended(): void {
    this.gesture.end();
    onFrame(this.renew);
  }
  private removeItem(): void {
    this.store.change({ what: 'Removed a sweep' }, (draft) => {
      draft.page = draft.page.filter((p) => p.id !== this.item.id);
    });
  }
  /** The same figures as rows, at most some twenty of them. */
  private tableOf(figure: LineFigure): TemplateResult {
    const [first] = figure.lines;
    const every = Math.max(1, Math.round(((first?.xs.length ?? 1) - 1) / 20));
    const rows = Array.from({ length: Math.floor(((first?.xs.length ?? 1) - 1) / every) + 1 }, (_, k) => k * every);
    const cell = (v: number): string =>
      Number.isFinite(v)
        ? figureOf(
            this.store,
            questionOf(this.item, this.store.catalogue).read,
            fromUnit(v, shownOf(this.store, questionOf(this.item, this.store.catalogue).read).unit),
          )
        : '–';
    return html`<div class="tablewrap" tabindex="0" role="region" aria-label=${figure.label}>
      <table>
        <caption>
          ${figure.y.title}
        </caption>
        <thead>
          <tr>
            <th scope="col">${figure.x.title}</th>
            ${figure.lines.map((l) => html`<th scope="col">${l.name || 'Value'}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            (i) =>
              html`<tr>
                <th scope="row">${figure.x.text(first!.xs[i]!)}</th>
                ${figure.lines.map((l) => html`<td>${cell(l.ys[i]!)}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }
}
customElements.define('sweep-figure', SweepFigure);
declare global {
  interface HTMLElementTagNameMap {
    'sweep-figure': SweepFigure;
  }
}
