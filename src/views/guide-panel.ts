import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import { present } from '../graph/state.ts';
import type { Document } from '../notebook/document.ts';
import {
  type Guide,
  GuideFault,
  type GuideStep,
  type Question,
  readGuide,
  type Trial,
  type Way,
} from '../notebook/guide.ts';
import { aimOf, answerOf, cellsOf, filled, outcome, type Part } from '../notebook/guide-says.ts';
import { Piece } from './piece.ts';
import { lower, when } from './words.ts';

/** What is said of a trial waits until the hand rests, so that nobody is read a figure for each step of a drag. */
const rests = 500; // ms
const choiceLabels: Readonly<Record<Way, string>> = { rise: 'It rises', fall: 'It falls', stay: 'It stays' };

/** <guide-panel>: the steps of a scenario's guide, one at a time. It only reads the notebook: what is tried is the reader's own edit. */
export class GuidePanel extends Piece {
  static override properties = {
    ...Piece.properties,
    guide: { attribute: false },
    at: { state: true },
    closed: { state: true },
    note: { state: true },
    answer: { state: true },
  };
  /** The scenario's guide as its file has it; undefined where it has none. */
  declare guide: unknown;
  declare at: number;
  declare closed: boolean;
  /** What the reader's trial moved. */
  declare note: string | null;
  declare answer: { readonly chosen: Way; readonly isRight: boolean; readonly text: string } | null;
  private read: Guide | null = null;
  private began = new Map<Cell, unknown>();
  private document: Document | undefined;
  private timer = 0;
  private unwatchAll: (() => void) | undefined;

  constructor() {
    super();
    this.at = 0;
    this.closed = false;
    this.note = null;
    this.answer = null;
  }
  override connectedCallback(): void {
    super.connectedCallback();
    // An element that is defined after it was made has its properties only once it has updated.
    void this.updateComplete.then(() => {
      if (this.isConnected) this.unwatchAll ??= this.store.watchAll(() => this.changed());
    });
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatchAll?.();
    this.unwatchAll = undefined;
    clearTimeout(this.timer);
  }
  private get step(): GuideStep | undefined {
    return this.read?.steps[this.at];
  }
  protected override watched(): readonly Cell[] {
    const { step } = this;
    if (!step || this.closed) return [];
    const { trial, question, text } = step;
    return [
      ...new Set([
        ...text.flatMap(cellsOf),
        ...(trial ? [trial.move, ...trial.watch, ...cellsOf(trial.say), ...cellsOf(trial.done)] : []),
        ...(question ? [question.vary, question.read, ...(question.beside ? [question.beside] : [])] : []),
        ...(question ? cellsOf(question.ask) : []),
      ]),
    ];
  }
  protected override willUpdate(changed?: PropertyValues): void {
    if (changed?.has('guide')) {
      this.read = this.readable();
      this.at = 0;
      this.closed = false;
      this.forget();
    }
    super.willUpdate();
    // A value that was missing when the step was begun counts from when it is there.
    for (const cell of this.watched()) {
      const value = present(this.store.state(cell));
      if (value !== undefined && !this.began.has(cell)) this.began.set(cell, value);
    }
  }
  private readable(): Guide | null {
    try {
      return this.guide === undefined ? null : readGuide(this.guide, this.store.catalogue);
    } catch (error) {
      if (error instanceof GuideFault) return null; // a test reads every guide; here the notebook does without
      throw error;
    }
  }
  private forget(): void {
    clearTimeout(this.timer);
    this.began = new Map();
    this.note = null;
    this.answer = null;
  }
  private changed(): void {
    const { document } = this.store;
    if (document === this.document) return;
    this.document = document;
    this.answer = null; // it was of the engine as it stood
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => {
      const trial = this.step?.trial;
      this.note = trial && !this.closed ? outcome(this.store, trial, this.began) : null;
    }, rests);
  }
  private go(to: number): void {
    this.at = to;
    this.forget();
    void this.focusOn('h3');
  }
  private turn(closed: boolean): void {
    this.closed = closed;
    void this.focusOn(closed ? '.guide-open' : 'h3');
  }
  private async focusOn(selector: string): Promise<void> {
    await this.updateComplete;
    this.querySelector<HTMLElement>(selector)?.focus();
  }
  /** To the field: the one in the opening if it is there, else the page follows the link to its chapter. */
  private jump(event: Event, cell: Cell): void {
    const field = document.getElementById(`three-${cell.id}`);
    if (!field) return;
    event.preventDefault();
    event.stopPropagation();
    field.focus({ preventScroll: true });
    field.closest('.field')?.scrollIntoView({ block: 'nearest' });
  }
  private choose(question: Question, chosen: Way): void {
    const found = answerOf(this.store, question);
    this.document = this.store.document;
    const isRight = typeof found !== 'string' && found.way === chosen;
    const text =
      typeof found === 'string'
        ? found
        : `${isRight ? question.right : question.wrong} ${found.figures} ${question.because[found.way]}`;
    this.answer = { chosen, isRight, text };
  }

  protected override render(): TemplateResult | typeof nothing {
    const { read, step } = this;
    if (!read || !step) return nothing;
    if (this.closed)
      return html`<button class="button guide-open" @click=${() => this.turn(false)}>Open the guide</button>`;
    return html`<section class="guide" aria-labelledby="guide-name">
      <h2 class="vh" id="guide-name">${read.name}</h2>
      <div class="guide-head">
        <nav aria-label="Steps of the guide">
          <ol>
            ${read.steps.map(
              (s, i) =>
                html`<li>
                  <button
                    aria-current=${i === this.at ? 'step' : nothing}
                    aria-label="Step ${i + 1}: ${s.heading}"
                    @click=${() => this.go(i)}
                  >
                    ${i + 1}
                  </button>
                </li>`,
            )}
          </ol>
        </nav>
        <button class="guide-close" @click=${() => this.turn(true)}>Close<span class="vh"> the guide</span></button>
      </div>
      <h3 tabindex="-1"><span class="vh">Step ${this.at + 1} of ${read.steps.length}: </span>${step.heading}</h3>
      ${step.text.map((words) => html`<p>${said(filled(this.store, words))}</p>`)}
      ${step.trial ? this.trial(step.trial) : nothing} ${step.question ? this.question(step.question) : nothing}
      ${when(!step.trial, () => html`<p class="guide-note" role="status">${this.answer?.text ?? ''}</p>`)}
      ${when(step.last, () => html`<p class="guide-last">${step.last}</p>`)}
      <div class="guide-turn">
        <button class="button" ?disabled=${this.at === 0} @click=${() => this.go(this.at - 1)}>Back</button>
        ${step.trial ? this.way(step.trial.move) : nothing}
        ${
          this.at < read.steps.length - 1
            ? html`<button class="button" @click=${() => this.go(this.at + 1)}>Next</button>`
            : html`<button class="button" @click=${() => this.turn(true)}>Finish</button>`
        }
      </div>
      ${when(step.trial, () => html`<p class="guide-note of-trial" role="status">${this.note ?? ''}</p>`)}
    </section>`;
  }
  private trial(trial: Trial): TemplateResult {
    const aim = aimOf(trial.move, this.began.get(trial.move), trial.by);
    return html`<p class="guide-try"><b>Try it.</b> ${said(filled(this.store, trial.say, aim))}</p>`;
  }
  private way(to: Cell): TemplateResult {
    return html`<a
      class="button guide-go"
      href="#${to.id}"
      aria-label="Go there: ${lower(to.label)}"
      @click=${(e: Event) => this.jump(e, to)}
      >Go there</a
    >`;
  }
  private question(question: Question): TemplateResult {
    const { store, answer } = this;
    const aim = aimOf(question.vary, present(store.state(question.vary)), question.by);
    return html`<p class="guide-try" id="guide-question">${said(filled(store, question.ask, aim))}</p>
      <div class="guide-choices" role="group" aria-labelledby="guide-question">
        ${question.choices.map(
          (way) =>
            html`<button
              class="button"
              aria-pressed=${answer?.chosen === way}
              @click=${() => this.choose(question, way)}
            >
              ${choiceLabels[way]}
            </button>`,
        )}
      </div>`;
  }
}

const said = (parts: readonly Part[]): readonly (TemplateResult | string)[] =>
  parts.map((part) => (part.live ? html`<b class="guide-value">${part.text}</b>` : part.text));

customElements.define('guide-panel', GuidePanel);
declare global {
  interface HTMLElementTagNameMap {
    'guide-panel': GuidePanel;
  }
}
