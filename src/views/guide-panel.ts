import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import { GuideFault } from '../notebook/guide-fault.ts';
import { type Guide, type GuideStep, type Question, readGuide, type Trial, type Way } from '../notebook/guide.ts';
import {
  aimOf,
  aimOfQuestion,
  filled,
  isMoved,
  keyOf,
  outcome,
  type Read,
  readsOf,
  readsOfQuestion,
  readsOfTrial,
  startsOf,
} from '../notebook/guide-says.ts';
import { valueAt } from '../notebook/guide-values.ts';
import { Asker } from './asker.ts';
import { progress, said, waitedFor } from './guide-parts.ts';
import { follow, wayOf } from './guide-way.ts';
import { Overlay } from './overlay.ts';
import { Piece } from './piece.ts';
import { Rest } from './rest.ts';
import { when } from './words.ts';

const choiceLabels: Readonly<Record<Way, string>> = { rise: 'It rises', fall: 'It falls', stay: 'It stays' };

/**
 * <guide-panel>: the steps of a scenario's guide, one at a time. It only reads the notebook: what is tried is the reader's
 * own edit. What takes long to work out is asked for only while the step that says it is in sight and hands rest.
 */
export class GuidePanel extends Piece {
  static override properties = {
    ...Piece.properties,
    guide: { attribute: false },
    at: { state: true },
    closed: { state: true },
    away: { state: true },
  };
  /** The scenario's guide as its file has it; undefined where it has none. */
  declare guide: unknown;
  declare at: number;
  declare closed: boolean;
  /** The reader was sent far down the page, and has not come back yet. */
  declare away: boolean;
  /** What the reader's trial moved; it waits until the hand rests, so that nobody is read a figure for each step of a drag. */
  private note: string | null = null;
  private read: Guide | null = null;
  private began = new Map<string, unknown>();
  /** The variant in which the step was begun. */
  private chosen: string | null = null;
  private wasNear = false;
  private unwatchAll: (() => void) | undefined;
  private readonly overlay = new Overlay(this, { cells: () => this.elsewhere });
  private readonly rest = new Rest(this);
  private readonly asker = new Asker(this);

  constructor() {
    super();
    this.at = 0;
    this.closed = false;
    this.away = false;
  }
  override connectedCallback(): void {
    super.connectedCallback();
    document.addEventListener('keydown', this.key);
    // An element that is defined after it was made has its properties only once it has updated.
    void this.updateComplete.then(() => {
      if (this.isConnected) this.unwatchAll ??= this.store.watchAll(() => this.overlay.isNear && this.requestUpdate());
    });
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.removeEventListener('keydown', this.key);
    this.unwatchAll?.();
    this.unwatchAll = undefined;
  }
  private get step(): GuideStep | undefined {
    return this.closed ? undefined : this.read?.steps[this.at];
  }
  /** What the step says. */
  private get spoken(): readonly Read[] {
    const { trial, text = [] } = this.step ?? {};
    return [...text.flatMap(readsOf), ...(trial ? readsOfTrial(trial) : [])];
  }
  /** All that the step reads, and may ask for now. */
  private get reads(): readonly Read[] {
    const question = this.step?.question;
    const all = [...this.spoken, ...(question ? readsOfQuestion(question) : [])];
    return all.filter(({ cell }) => this.asksSlowly || this.store.live.isQuick(cell));
  }
  private get asksSlowly(): boolean {
    return this.overlay.isNear && this.rest.isAtRest;
  }
  private readsIn(isHere: boolean): readonly Cell[] {
    const { chosen } = this.store.document;
    const here = this.reads.filter(({ of }) => (of === undefined || of === chosen) === isHere);
    return [...new Set(here.map(({ cell }) => cell))];
  }
  protected override watched(): readonly Cell[] {
    return this.readsIn(true);
  }
  /** What is looked at in the variants that are not chosen. */
  private get elsewhere(): readonly Cell[] {
    return this.readsIn(false);
  }
  protected override willUpdate(changed?: PropertyValues): void {
    if (changed?.has('guide')) {
      this.read = this.readable();
      this.at = 0;
      this.closed = false;
      this.forget();
    }
    const { chosen } = this.store.document;
    if (chosen !== this.chosen) this.began = new Map(); // it is another engine
    this.chosen = chosen;
    const { isNear } = this.overlay;
    if (isNear && !this.wasNear) this.away = false;
    this.wasNear = isNear;
    super.willUpdate();
    const trial = this.step?.trial;
    if (trial) this.remember(trial);
    if (this.rest.isAtRest) this.note = trial ? outcome(this.store, trial, this.began) : null;
  }
  /** A value that was missing when the step was begun counts from when it is there; a slow one only until something moves. */
  private remember(trial: Trial): void {
    const { store, began } = this;
    for (const at of startsOf(trial)) {
      const found = valueAt(store, at);
      const isLate = !store.live.isQuick(at.cell) && isMoved(store, trial, began);
      if (found.is === 'there' && !isLate && !began.has(keyOf(at))) began.set(keyOf(at), found.value);
    }
  }
  private readable(): Guide | null {
    const { catalogue, document } = this.store;
    try {
      return this.guide === undefined ? null : readGuide(this.guide, catalogue, document.variants);
    } catch (error) {
      if (error instanceof GuideFault) return null; // a test reads every guide; here the notebook does without
      throw error;
    }
  }
  private forget(): void {
    this.began = new Map();
    this.note = null;
    this.away = false;
    this.asker.forget();
  }
  private go(to: number): void {
    this.at = to;
    this.forget();
    void this.focusOn('h3');
  }
  private turn(closed: boolean): void {
    this.closed = closed;
    if (closed) this.asker.stop();
    void this.focusOn(closed ? '.guide-open' : 'h3');
  }
  private async focusOn(selector: string): Promise<void> {
    await this.updateComplete;
    this.querySelector<HTMLElement>(selector)?.focus();
  }
  private back(): void {
    this.away = false;
    void this.focusOn('h3');
  }
  private readonly key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && this.away && !event.defaultPrevented) this.back();
  };

  protected override render(): TemplateResult | typeof nothing {
    const { read, step } = this;
    if (!read) return nothing;
    if (!step) return html`<button class="button guide-open" @click=${() => this.turn(false)}>Open the guide</button>`;
    const { trial, question } = step;
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
      ${trial ? this.trial(trial) : nothing} ${question ? this.question(question) : nothing}
      ${when(step.last, () => html`<p class="guide-last">${step.last}</p>`)}
      <div class="guide-turn">
        <button class="button" ?disabled=${this.at === 0} @click=${() => this.go(this.at - 1)}>Back</button>
        ${trial ? this.way(trial) : nothing}
        ${
          this.at < read.steps.length - 1
            ? html`<button class="button" @click=${() => this.go(this.at + 1)}>Next</button>`
            : html`<button class="button" @click=${() => this.turn(true)}>Finish</button>`
        }
      </div>
      ${when(trial && trial.is !== 'open', () => html`<p class="guide-note of-trial" role="status">${this.note ?? ''}</p>`)}
      ${this.asksSlowly ? waitedFor(this.store, this.spoken) : nothing}
      ${when(
        this.away && !this.overlay.isNear,
        () =>
          html`<button class="button guide-back" aria-keyshortcuts="Escape" @click=${() => this.back()}>
            Back to the guide
          </button>`,
      )}
    </section>`;
  }
  private trial(trial: Trial): TemplateResult {
    const aim = trial.is === 'field' ? aimOf(trial.move, this.began.get(trial.move.id), trial.to) : undefined;
    return html`<p class="guide-try"><b>Try it.</b> ${said(filled(this.store, trial.say, aim))}</p>`;
  }
  private way(trial: Trial): TemplateResult {
    const { store } = this;
    const { to, name } = wayOf(store, trial);
    return html`<a
      class="button guide-go"
      href="#${to}"
      aria-label="Go there: ${name}"
      @click=${(e: Event) => (this.away = follow(e, store, trial))}
      >Go there</a
    >`;
  }
  private question(question: Question): TemplateResult {
    const { store, asker } = this;
    const { asking, told } = asker;
    return html`<p class="guide-try" id="guide-question">
        ${said(filled(store, question.ask, aimOfQuestion(store, question)))}
      </p>
      <div class="guide-choices" role="group" aria-labelledby="guide-question">
        ${question.choices.map(
          (way) =>
            html`<button
              class="button"
              aria-pressed=${(asking ?? told)?.chosen === way}
              @click=${() => asker.ask(question, way)}
            >
              ${choiceLabels[way]}
            </button>`,
        )}
      </div>
      <p class="guide-note" role="status">${told?.text ?? ''}</p>
      ${asking ? progress(asking.done, () => asker.stop()) : nothing}`;
  }
}

customElements.define('guide-panel', GuidePanel);
declare global {
  interface HTMLElementTagNameMap {
    'guide-panel': GuidePanel;
  }
}
