import { html, nothing, type TemplateResult } from 'lit';
import { Impossible, lastGood } from '../graph/state.ts';
import type { Snapshot } from '../graph/snapshot.ts';
import { NotSettled } from '../graph/snapshot.ts';
import type { SweepResult } from '../graph/sweep.ts';
import type { SweepItem } from '../notebook/document.ts';
import { coarse, isSlow, type Question, questionOf, sweepNow, taskOf } from '../notebook/sweeps.ts';
import { type LineFigure, twinOf } from '../plots/line-figure.ts';
import { say } from '../units/phrase.ts';
import { fromUnit, tidy, toUnit } from '../units/unit.ts';
import { figureTools } from './figure-parts.ts';
import { twinTable } from './figure-tools.ts';
import { onFrame } from './frame.ts';
import { Gesture } from './gesture.ts';
import { Piece } from './piece.ts';
import { plots } from './plots.ts';
import { sweepFigure } from './sweep-data.ts';
import { isSame, type OtherSweep } from './sweep-lines.ts';
import { SweepOthers } from './sweep-others.ts';
import { figureOf, lower, shownOf, spoken, when } from './words.ts';
import './line-plot.ts';
import './sweep-sentence.ts';

/** <sweep-figure>: a sweep's sentence and its figure; its mark moves the input. */
export class SweepFigure extends Piece {
  static override properties = {
    ...Piece.properties,
    item: { attribute: false },
    number: { type: Number },
    table: { state: true },
    note: { state: true },
    done: { state: true },
  };
  declare item: SweepItem;
  declare number: number;
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
  /** The other variants in which it comes to the same. */
  private same: readonly string[] = [];
  private readonly others = new SweepOthers(
    this,
    () => questionOf(this.item, this.store.catalogue),
    () => onFrame(this.renew),
  );

  constructor() {
    super();
    this.number = 0;
    this.table = false;
    this.note = null;
    this.done = null;
  }
  override connectedCallback(): void {
    super.connectedCallback();
    // An element that is defined after it was made has its properties only once it has updated.
    void this.updateComplete.then(() => {
      if (!this.isConnected) return;
      // A sweep can stand on anything: it is drawn anew, at most once a frame, after any change.
      this.unwatchAll ??= this.store.watchAll(() => onFrame(this.renew));
      onFrame(this.renew);
    });
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatchAll?.();
    this.unwatchAll = undefined;
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
      else this.show(at, question, sweepNow(at, question), this.others.quick(question));
    } catch (error) {
      if (!(error instanceof NotSettled)) throw error;
      // Whose value is to blame is often another cell than the one that was read.
      const blamed = error.state.is === 'fault' ? store.catalogue.cells.get(error.state.fault.about) : undefined;
      const cell = blamed ?? error.cell;
      this.note = html`Waits for <a href="#${cell.id}">${lower(cell.label)}</a>. This is the last good figure.`;
    }
    this.requestUpdate();
  };
  private show(
    at: Snapshot,
    question: Question,
    found: SweepResult,
    others: readonly OtherSweep[] = [],
    isWhole = true,
  ): void {
    const dragging = this.gesture.now !== undefined;
    const { self } = this.others.overlay;
    const apart = others.filter((other) => !isSame(other.found, found));
    this.same = others.filter((other) => !apart.includes(other)).map((other) => other.name);
    this.figure = sweepFigure(this.store, at, question, { found, isWhole, self, others: apart }, this.domain);
    if (!dragging) this.domain = this.figure.y.domain;
    else this.figure = { ...this.figure, y: { ...this.figure.y, domain: this.domain ?? this.figure.y.domain } };
    this.note = null;
  }
  private renewSlowly(question: Question): void {
    const few = coarse(question);
    const task = taskOf(this.store, few);
    const key = JSON.stringify(task);
    if (this.found?.key === key) return this.show(this.store.snapshot(), few, this.found.result, this.others.slow(few));
    if (this.job?.key === key) return;
    this.others.stop();
    this.job?.stop();
    this.job = null;
    const { explorer } = this.store;
    if (!explorer) return;
    this.done = 0;
    const end = (): void => {
      this.job = null;
      this.done = null;
    };
    const stop = explorer.explore('sweep', task, (news) => {
      if (news.is === 'waiting') this.done = news.done;
      else if (news.is === 'coming') {
        this.done = news.done;
        this.show(this.store.snapshot(), few, news.result, [], false);
      } else if (news.is === 'fault') {
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
      ? `${spoken(store, vary, fromUnit(figure.mark.x, shown.unit))}, ${lower(read.label)} ${spoken(store, read, fromUnit(figure.mark.y, shownOf(store, read).unit))}`
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
      <div class="frame ${this.note || this.done !== null ? 'stale' : ''}">
        ${
          figure && !this.table
            ? plots(
                store,
                figure,
                (one) =>
                  html`<line-plot
                    .figure=${one}
                    .tall=${one === figure}
                    .step=${shown.step}
                    .now=${() => toUnit(Number(lastGood(store.state(vary))), shown.unit)}
                    .markLabel=${`${vary.label}, on the figure`}
                    .markText=${said}
                    @mark-start=${() => this.gesture.begin()}
                    @mark-end=${() => this.ended()}
                    @mark-move=${(e: CustomEvent<number>) => this.move(e.detail)}
                  ></line-plot>`,
              )
            : nothing
        }
        ${figure && this.table ? twinTable(figure.y.title, twinOf(figure)) : nothing}
      </div>
      <figcaption><b>Figure ${this.number}.</b> ${this.caption(figure)}</figcaption>
      <div class="tools">
        ${figure ? figureTools(this, { title: `${read.label} against ${lower(vary.label)}`, twin: () => twinOf(figure) }) : nothing}
        <button class="why sans" @click=${() => this.removeItem()}>Remove this sweep</button>
      </div>
    </figure>`;
  }
  /** What there is to see: the bands, where the mark is, what is missing. */
  private caption(figure: LineFigure | null): string {
    if (!figure) return '';
    const bands = figure.bands.some((b) => b.tone !== 'comfortable')
      ? 'The bands are those of here; their edges are common practice, and yours to move. '
      : '';
    const rules = figure.rules.length > 0 ? 'Dashed: the edges at the lowest altitude. ' : '';
    const isAlone = figure.lines.every((l) => l.variant === figure.lines[0]!.variant);
    const others = isAlone ? '' : 'Thin, with their names: the other variants. ';
    const same = this.same.length === 0 ? '' : `On the same lines: ${this.same.join(', ')}. `;
    const { vary } = questionOf(this.item, this.store.catalogue);
    const mark = !figure.mark
      ? `${vary.label} as it stands lies outside this figure.`
      : figure.mark.movable
        ? 'Drag the mark.'
        : 'The mark is the present setting.';
    return `${bands}${rules}${others}${same}${mark}`;
  }
  private ended(): void {
    this.gesture.end();
    onFrame(this.renew);
  }
  private removeItem(): void {
    this.store.change({ what: 'Removed a sweep', announce: true }, (draft) => {
      draft.page = draft.page.filter((p) => p.id !== this.item.id);
    });
  }
}
customElements.define('sweep-figure', SweepFigure);
declare global {
  interface HTMLElementTagNameMap {
    'sweep-figure': SweepFigure;
  }
}
