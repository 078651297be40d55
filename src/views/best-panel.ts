import { html, nothing, type TemplateResult } from 'lit';
import type { Explorer } from '../graph/explorer.ts';
import type { Design } from '../graph/problem.ts';
import { cautionsChanged } from '../notebook/cautions.ts';
import type { BestItem } from '../notebook/document.ts';
import { keepDesign } from '../notebook/keep-design.ts';
import { Looking } from '../notebook/looking.ts';
import { shownDesigns } from '../notebook/shown-designs.ts';
import type { Store } from '../notebook/store.ts';
import { type Phrase, say } from '../units/phrase.ts';
import { bestTwin, cloudOf, countsOf, doubtOf, presentOf } from './best-data.ts';
import { inOneLine, toldOf } from './best-words.ts';
import { figureTools } from './figure-parts.ts';
import { twinTable } from './figure-tools.ts';
import { onFrame } from './frame.ts';
import { Piece } from './piece.ts';
import { when } from './words.ts';
import './best-cloud.ts';
import './best-sentence.ts';

/** What was found stays while a chapter is closed, and while another sentence stands there. */
const known = new WeakMap<Store, Map<string, Looking>>();
const kept = 8;

/** <best-panel>: a look for the best of many designs: its sentence, how far it is, what it found, and a way to keep it. */
export class BestPanel extends Piece {
  static override properties = {
    ...Piece.properties,
    item: { attribute: false },
    explorer: { attribute: false },
    number: { type: Number },
    table: { state: true },
    chosen: { state: true },
    fault: { state: true },
  };
  declare item: BestItem;
  declare explorer: Explorer | null;
  declare number: number;
  declare table: boolean;
  /** Which of the designs that are told of is looked at. */
  declare chosen: number;
  declare fault: string | null;
  private unwatchAll: (() => void) | undefined;
  private cautioned:
    | { readonly looking: Looking; readonly at: Design['at']; readonly cautions: readonly Phrase[] }
    | undefined;

  constructor() {
    super();
    this.explorer = null;
    this.number = 0;
    this.table = false;
    this.chosen = 0;
    this.fault = null;
  }
  override connectedCallback(): void {
    super.connectedCallback();
    void this.updateComplete.then(() => {
      if (this.isConnected) this.unwatchAll ??= this.store.watchAll(() => onFrame(this.renew));
    });
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatchAll?.();
    this.unwatchAll = undefined;
    this.looking?.stop();
  }
  private readonly renew = (): void => this.requestUpdate();
  private get key(): string {
    return JSON.stringify(this.item);
  }
  /** The look that belongs to the sentence as it stands. */
  private get looking(): Looking | undefined {
    return known.get(this.store)?.get(this.key);
  }
  private look(): void {
    const all = known.get(this.store) ?? new Map<string, Looking>();
    known.set(this.store, all);
    for (const other of all.values()) if (other.item.id === this.item.id) other.stop();
    all.delete(this.key);
    if (all.size >= kept) all.delete(all.keys().next().value!);
    this.chosen = 0;
    this.fault = null;
    all.set(this.key, new Looking(this.store, this.item, this.explorer, () => onFrame(this.renew)));
    this.requestUpdate();
  }
  protected override willUpdate(): void {
    super.willUpdate();
    // Another sentence asks for something else: what was being looked for is not wanted any more.
    for (const other of known.get(this.store)?.values() ?? [])
      if (other.item.id === this.item.id && other !== this.looking) other.stop();
  }

  protected override render(): TemplateResult {
    const { store, item, looking } = this;
    const question = looking?.question;
    const shown = question ? shownDesigns(question, looking.found) : [];
    const chosen = Math.min(this.chosen, shown.length - 1);
    return html`<figure class="fig best" id=${item.id}>
      <best-sentence .store=${store} .item=${item}></best-sentence>
      ${this.progress()} ${this.outcome(shown)}
      ${
        question && shown.length > 0
          ? html`${
              this.table
                ? html`<div class="frame">
                    ${twinTable('The designs found', bestTwin(store, question, looking, shown))}
                  </div>`
                : html`<best-cloud
                    .cloud=${cloudOf(store, question, looking, shown, chosen)}
                    .names=${shown.map((d, i) => `No. ${i + 1}: ${inOneLine(toldOf(store, question, d, looking.rowOf(d.at)))}`)}
                    @choose=${(e: CustomEvent<number>) => {
                      this.chosen = e.detail;
                      this.fault = null;
                    }}
                  ></best-cloud>`
            }
            ${this.design(looking, shown, chosen)}`
          : nothing
      }
      <figcaption><b>Figure ${this.number}.</b> ${this.caption(looking, shown)}</figcaption>
      <div class="tools">
        ${question && shown.length > 0 ? figureTools(this, { title: 'Best of many', twin: () => bestTwin(store, question, looking, shown) }) : nothing}
        <button class="why sans" @click=${() => this.removeItem()}>Remove this</button>
      </div>
    </figure>`;
  }

  /** The one thing on the page with a button to start it: it takes its time. One button, so that it keeps the focus. */
  private progress(): TemplateResult {
    const { looking, item } = this;
    const running = looking && !looking.ending ? looking : null;
    const left = running?.secondsLeft;
    return html`${when(
        running,
        () =>
          html`<div
            class="bar"
            role="progressbar"
            aria-label="Designs worked out"
            aria-valuemin="0"
            aria-valuemax=${item.budget}
            aria-valuenow=${running!.done}
            style="--done:${((running!.done / item.budget) * 100).toFixed(1)}%"
          ></div>`,
      )}
      <p class="look">
        <button class="button" @click=${() => (running ? running.stop() : this.look())}>
          ${running ? 'Stop' : looking ? 'Look again' : 'Look for it'}
        </button>
        ${running ? html`<span>${running.done} of ${item.budget} designs${left === undefined ? '' : `, about ${timeOf(left)} to go`}.</span>` : nothing}
      </p>`;
  }
  private outcome(shown: readonly Design[]): TemplateResult {
    const { looking, store } = this;
    const ending = looking?.ending;
    const question = looking?.question;
    const first =
      ending?.is === 'fault'
        ? say(ending.message, store.system)
        : ending?.is === 'stopped'
          ? 'Stopped. What was found stands.'
          : ending?.is === 'edited'
            ? 'The engine was changed, and that stopped the look. What was found is of the engine as it was.'
            : ending && looking.isPast
              ? 'The engine was changed since. This is of the engine as it was.'
              : '';
    const none =
      ending && ending.is !== 'fault' && question && shown.length === 0
        ? looking.found.tried.length + looking.found.leftOut.length === 0
          ? 'Nothing had been found yet.'
          : 'None of them keeps to all of this.'
        : '';
    const counts = ending && question ? countsOf(question, looking) : '';
    const words = [first, none, counts].filter((part) => part !== '').join(' ');
    return html`<p class=${ending?.is === 'fault' ? 'fault' : 'stale-note'} role="status">${words}</p>`;
  }

  /** The design that is looked at: what it comes to beside the present, its cautions, and a button to keep it. */
  private design(looking: Looking, shown: readonly Design[], chosen: number): TemplateResult {
    const { store } = this;
    const question = looking.question!;
    const design = shown[chosen]!;
    const told = toldOf(store, question, design, looking.rowOf(design.at));
    const present = presentOf(looking);
    const now = present ? toldOf(store, question, present, looking.rowOf(present.at)) : [];
    const cautions = this.cautionsOf(looking, design);
    return html`<div class="design">
      <p class="which">No. ${chosen + 1} of ${shown.length}</p>
      <ul class="reads">
        ${told.map(
          ({ name, text, isYours }, i) =>
            html`<li>
              <span>${name}</span><b class=${isYours ? 'yours' : ''}>${text}</b>
              ${now[i] && now[i].text !== text ? html`<small>now ${now[i].text}</small>` : nothing}
            </li>`,
        )}
      </ul>
      <p class="quiet">
        ${cautions.length === 0 ? 'It turns on no caution.' : html`It turns on: ${cautions.map((c) => say(c, store.system)).join(' ')}`}
      </p>
      <p>
        <button class="button" @click=${() => this.keep(looking, design, chosen)}>Keep as a variant</button>
      </p>
      ${when(this.fault, () => html`<p class="fault" role="alert">${this.fault}</p>`)}
    </div>`;
  }
  /** Every verdict and remark is asked, once for each design: what is looked at may be drawn anew with every frame. */
  private cautionsOf(looking: Looking, { at }: Design): readonly Phrase[] {
    if (this.cautioned?.looking !== looking || this.cautioned.at !== at) {
      const changes = looking.question!.vary.map((cell, k) => ({ cell, value: at[k]! }));
      this.cautioned = { looking, at, cautions: cautionsChanged(looking.at, this.store.catalogue, changes).on };
    }
    return this.cautioned.cautions;
  }
  private keep(looking: Looking, design: Design, chosen: number): void {
    this.fault = keepDesign(this.store, looking, design.at, `Best of ${looking.done}, no. ${chosen + 1}`);
  }

  private caption(looking: Looking | undefined, shown: readonly Design[]): string {
    const hint =
      'A model’s best is a hint, not a promise: measure, and build it only if you would without the last percent.';
    const question = looking?.question;
    if (!question || shown.length === 0)
      return `Designs are tried within the ranges, first all over, then round the best. ${hint}`;
    const [, other] = question.aims;
    const what = other
      ? 'On the line stand the designs of which none beats another in both; the small dots were tried as well.'
      : `The dots are the ${shown.length > 1 ? `${shown.length} best that differ` : 'best'}; the small ones were tried as well and keep to the limits.`;
    const slow = question.isSlow
      ? 'Slow results are taken roughly here; kept as a variant they are worked out in full, and differ a little.'
      : '';
    return [what, doubtOf(this.store, question, shown), slow, hint].filter((part) => part !== '').join(' ');
  }
  private removeItem(): void {
    this.store.change({ what: 'Removed a look for the best', announce: true }, (draft) => {
      draft.page = draft.page.filter((p) => p.id !== this.item.id);
    });
  }
}

const timeOf = (seconds: number): string =>
  seconds < 90 ? `${Math.max(1, Math.round(seconds))} s` : `${Math.round(seconds / 60)} min`;
customElements.define('best-panel', BestPanel);
declare global {
  interface HTMLElementTagNameMap {
    'best-panel': BestPanel;
  }
}
