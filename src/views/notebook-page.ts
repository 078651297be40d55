import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { Input } from '../graph/cell.ts';
import { answersOf, fieldsOf } from '../graph/chapter.ts';
import type { Notice } from '../notebook/desk.ts';
import { type FigureItem, type Item, longestLink } from '../notebook/document.ts';
import type { AddItem } from './add-items.ts';
import { curvesOf, drawnOf } from './chapter-figures.ts';
import { Piece } from './piece.ts';
import { when } from './words.ts';
import './summary-strip.ts';
import './verdict-note.ts';

/** A notebook to start from. */
export interface StartingPoint {
  readonly id: string;
  readonly title: string;
  readonly sentence: string;
  readonly guide: unknown;
}
/** <notebook-page>: the whole page. What concerns more than the notebook itself it asks for with events. */
export class NotebookPage extends Piece {
  static override properties = {
    ...Piece.properties,
    starts: { attribute: false },
    notices: { attribute: false },
    fragment: { attribute: false },
    saved: {},
    ready: { type: Boolean },
    opened: { attribute: false },
    sharing: { state: true },
    turning: { state: true },
  };
  declare starts: readonly StartingPoint[];
  declare notices: readonly Notice[];
  declare fragment: string | null;
  declare saved: string;
  declare sharing: boolean;
  /** The plate has grown into the crank view. */
  declare turning: boolean;
  /** True once chapters and figures are loaded. */
  declare ready: boolean;
  /** The chapters that are open, by id. */
  declare opened: ReadonlySet<string>;
  private unwatchAll: (() => void) | undefined;
  private known: { readonly page: readonly Item[]; readonly parts: ReturnType<typeof chaptersOf> } | undefined;

  constructor() {
    super();
    this.starts = [];
    this.notices = [];
    this.fragment = null;
    this.saved = '';
    this.sharing = false;
    this.turning = false;
    this.ready = false;
    this.opened = new Set();
  }
  override connectedCallback(): void {
    super.connectedCallback();
    document.addEventListener('keydown', this.key);
  }
  /** The store of the first readouts gives way to the one of the whole notebook. */
  protected override willUpdate(changed?: PropertyValues): void {
    if (changed?.has('store')) {
      this.unwatchAll?.();
      this.unwatchAll = this.store.watchAll(() => this.requestUpdate());
    }
    super.willUpdate();
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatchAll?.();
    document.removeEventListener('keydown', this.key);
  }
  private readonly key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && this.sharing) {
      this.sharing = false;
      this.querySelector<HTMLElement>('.share')?.focus();
      return;
    }
    const { target } = event;
    const typing =
      target instanceof HTMLTextAreaElement ||
      (target instanceof HTMLInputElement && target.type !== 'range' && target.type !== 'radio');
    if (!(event.ctrlKey || event.metaKey) || event.altKey || typing) return;
    const redo = event.key.toLowerCase() === 'y' || (event.key.toLowerCase() === 'z' && event.shiftKey);
    if (!redo && event.key.toLowerCase() !== 'z') return;
    event.preventDefault();
    void this.travel(redo ? this.store.redo() : this.store.undo());
  };
  /** Shows where a step that was taken back or done again happened. */
  private async travel(step: { readonly place: string | null } | null): Promise<void> {
    if (!step?.place) return;
    await this.unfold(step.place);
    // The opening has fields of some cells as well: one in sight is enough.
    const twin = document.getElementById(`three-${step.place}`)?.closest('.field, .choice');
    const own = document.getElementById(step.place);
    const place = twin && isInSight(twin) ? twin : own;
    if (!place) return;
    if (!isInSight(place)) place.scrollIntoView({ block: 'nearest' });
    wash(place);
  }
  private ask(type: string, detail?: string): void {
    this.dispatchEvent(new CustomEvent(type, { detail }));
  }

  protected override render(): TemplateResult {
    const { store } = this;
    const { document: notebook } = store;
    return html`<a class="skip sans" href="#three">Skip to the three that decide</a>
      <nav class="strip" aria-label="Pinned answers and tools" @click=${(e: Event) => void this.follow(e)}>
        <div class="strip-in">
          <a class="mark" href="#top">Closing Angle</a>
          <summary-strip .store=${store}></summary-strip>
          ${this.toolbar()}
        </div>
      </nav>
      <main class="page" id="top" ?inert=${!this.ready} @click=${(e: Event) => void this.follow(e)}>
        ${this.notices.map(
          (n) =>
            html`<div class="notice" role="status">
              <p>${n.text}</p>
              ${n.actions.map((a) => html`<button class="button" @click=${a.act}>${a.label}</button>`)}
            </div>`,
        )}
        ${when(this.sharing, () => html`<share-panel .fragment=${this.fragment} .longest=${longestLink} @save-file=${() => this.ask('save-file')} @open-file=${() => this.openFile()}></share-panel>`)}
        <section class="opening split" aria-labelledby="title">
          <header>
            <p class="kicker">A notebook for one short block<variant-mark .store=${store}></variant-mark></p>
            <h1 id="title">${notebook.title}</h1>
          </header>
          ${this.guide()}
          <div class="lead">${this.lead()}</div>
          <div class="note">
            <p class="first">${notebook.sentence}</p>
            <p>Whatever is set in <b class="blue">blue</b> is yours to move. Everything else follows.</p>
            <variants-panel .store=${store}></variants-panel>
          </div>
          ${this.startList()}
        </section>
        ${this.comparison()} ${when(this.ready, () => this.chapters())}
        <p class="cautions" ?hidden=${!this.ready}>
          These figures are planning aids. Knock breaks pistons. Measure chamber, deck and gasket volumes on the real
          parts, and check piston-to-valve clearance on the real engine before it turns. Emission and noise rules are
          local. A qualified engine builder and local rules decide.
        </p>
        <p class="saved" role="status">${this.saved}</p>
      </main>
      ${when(this.ready, () => html`<toast-line .store=${store}></toast-line>`)}`;
  }

  /** Few notebooks have a guide: it is loaded with those that do. */
  private guide(): TemplateResult | typeof nothing {
    const guide = this.starts.find((s) => s.title === this.store.document.title)?.guide;
    if (!this.ready || guide === undefined) return nothing;
    void import('./guide-panel.ts');
    return html`<guide-panel .store=${this.store} .guide=${guide}></guide-panel>`;
  }
  private comparison(): TemplateResult | typeof nothing {
    const { document: notebook } = this.store;
    if (!this.ready || notebook.variants.length === 0) return nothing;
    return html`<comparison-table .store=${this.store} .notebook=${notebook}></comparison-table>`;
  }

  /** The fields that decide, the verdicts, and the plate. */
  private lead(): TemplateResult | typeof nothing {
    const { store } = this;
    const { opening, cycle } = store.catalogue;
    if (!opening) return nothing;
    return html`<div class="three" id="three" role="group" aria-label="The three that decide it">
        ${opening.fields.map((cell) =>
          cell.kind.name === 'choice'
            ? html`<choice-field
                .plain=${true}
                .name=${'three'}
                .store=${store}
                .cell=${cell as Input<string>}
              ></choice-field>`
            : html`<number-field .plain=${true} .name=${'three'} .store=${store} .cell=${cell}></number-field>`,
        )}
      </div>
      <verdict-note .store=${store} .here=${opening.here} .low=${opening.low}></verdict-note>
      ${
        this.turning && cycle
          ? html`<crank-view .store=${store} .view=${cycle} .number=${1}></crank-view>`
          : html`<drawn-figure class="plate" .store=${store} .figure=${opening.plate} .number=${1}></drawn-figure>`
      }
      ${when(
        cycle,
        () =>
          html`<p class="turning">
            <button class="link" @click=${() => void this.turnCrank()}>
              ${this.turning ? 'Back to the closing' : 'Turn the crank through the whole cycle'}
            </button>
          </p>`,
      )}`;
  }
  private async turnCrank(): Promise<void> {
    await import('./crank-view.ts');
    this.turning = !this.turning;
    await this.updateComplete;
    // What was asked for stands above the button, and one figure is taller than the other.
    this.querySelector('crank-view, .plate')?.scrollIntoView({ block: 'start' });
  }

  private toolbar(): TemplateResult {
    const { store } = this;
    const si = store.system === 'si';
    const units = (): void =>
      store.change({ what: `Showed ${si ? 'US' : 'SI'} units` }, (draft) => {
        draft.units.system = si ? 'us' : 'si';
      });
    return html`<div class="toolbar" role="group" aria-label="Notebook" ?inert=${!this.ready}>
      <button
        ?disabled=${store.canUndo === null}
        title=${store.canUndo ?? nothing}
        @click=${() => void this.travel(store.undo())}
      >
        Undo
      </button>
      <button
        ?disabled=${store.canRedo === null}
        title=${store.canRedo ?? nothing}
        @click=${() => void this.travel(store.redo())}
      >
        Redo
      </button>
      <button @click=${() => store.resetAll()}>Reset</button>
      <button aria-label="${si ? 'SI' : 'US'} units. Change to ${si ? 'US' : 'SI'}" @click=${units}>
        ${si ? 'SI' : 'US'} units
      </button>
      <button class="share" aria-expanded=${this.sharing} @click=${() => this.share()}>Share</button>
    </div>`;
  }
  private share(): void {
    void import('./share-panel.ts');
    this.sharing = !this.sharing;
    if (this.sharing) this.ask('share');
  }

  /** The panel makes way for what the page has to say about the file. */
  private openFile(): void {
    this.sharing = false;
    this.ask('open-file');
  }

  private startList(): TemplateResult {
    return html`<nav class="start" aria-labelledby="start-from">
      <h2 id="start-from">Start from another</h2>
      <ul>
        ${this.starts
          .filter((s) => s.title !== this.store.document.title)
          .map(
            (s) =>
              html`<li>
                <a
                  href="?start=${encodeURIComponent(s.title)}"
                  @click=${(e: Event) => {
                    e.preventDefault();
                    this.ask('start', s.id);
                  }}
                  ><b>${s.title}</b><span>${firstSentence(s.sentence)}</span></a
                >
              </li>`,
          )}
      </ul>
    </nav>`;
  }

  /** Chapters in the order of the page, each with the figures that were added to it. */
  private chapters(): TemplateResult {
    const { store } = this;
    let figures = 2; // the plate is figure 1
    return html`${this.parts(store.document.page).map(({ chapter: id, items }) => {
      const chapter = store.catalogue.chapters.find((c) => c.id === id)!;
      const open = this.opened.has(id);
      const first = figures;
      if (open) figures += items.length + drawnOf(store, chapter).length + curvesOf(chapter).length;
      return html`<chapter-section
        .store=${store}
        .chapter=${chapter}
        .items=${items}
        .open=${open}
        .firstFigure=${first}
        @turn=${(e: CustomEvent<string>) => this.turn(e.detail)}
        @add-item=${(e: CustomEvent<AddItem>) => this.addItem(e.detail)}
      ></chapter-section>`;
    })}`;
  }
  /** The chapters with their figures; the same arrays as long as the page is the same. */
  private parts(page: readonly Item[]): ReturnType<typeof chaptersOf> {
    if (this.known?.page !== page) this.known = { page, parts: chaptersOf(page) };
    return this.known.parts;
  }
  private turn(id: string, open = !this.opened.has(id)): void {
    const next = new Set(this.opened);
    if (open) next.add(id);
    else next.delete(id);
    this.opened = next;
    this.ask('opened', [...next].join(' '));
  }
  /** Follows a link to a cell: its chapter opens first, then its row is brought into view and washed. */
  private async follow(event: Event): Promise<void> {
    const link = (event.target as Element).closest('a[href^="#"]');
    const id = link?.getAttribute('href')?.slice(1);
    if (!id || !this.store.catalogue.cells.has(id)) return;
    event.preventDefault();
    await this.show(id);
  }
  private async show(id: string): Promise<void> {
    const { chapters } = this.store.catalogue;
    const home = chapters.find((c) => [...answersOf(c), ...fieldsOf(c)].some((cell) => cell.id === id));
    if (home && !this.opened.has(home.id)) {
      this.turn(home.id, true);
      await this.updateComplete;
      await new Promise((done) => requestAnimationFrame(done));
    }
    await this.unfold(id);
    const place = document.getElementById(id) ?? document.getElementById(`row-${id}`);
    if (!place) return;
    place.scrollIntoView({ block: 'center' });
    wash(place);
    // The field itself before what resets it.
    const first = place.querySelector<HTMLElement>('input') ?? place.querySelector<HTMLElement>('button');
    first?.focus({ preventScroll: true });
  }
  /** Opens the group that a cell is folded away in. */
  private async unfold(id: string): Promise<void> {
    for (const group of this.querySelectorAll('chapter-group')) if (group.holds(id)) await group.unfold();
  }
  private addItem({ chapter, add }: AddItem): void {
    const { store } = this;
    const { page } = store.document;
    let n = 1;
    while (page.some((p) => p.id === `${add.type}${n}`)) n++;
    const item = add.fresh(`${add.type}${n}`, store.catalogue);
    store.change({ what: `Added ${add.name}`, place: item.id, announce: true }, (draft) => {
      const at = draft.page.findIndex((p) => p.type === 'chapter' && p.chapter === chapter);
      const next = draft.page.findIndex((p, i) => i > at && p.type === 'chapter');
      draft.page.splice(next < 0 ? draft.page.length : next, 0, item as (typeof draft.page)[number]);
    });
  }
}

const firstSentence = (text: string): string => /^.*?[.!?](?=\s|$)/.exec(text)?.[0] ?? text;

function isInSight(place: Element): boolean {
  const { top, bottom } = place.getBoundingClientRect();
  return top >= 58 && bottom <= innerHeight; // under the strip, which is 58 px or more
}
function wash(place: Element): void {
  place.classList.remove('washed');
  requestAnimationFrame(() => place.classList.add('washed'));
}

/** The page's chapters in order, each with the figures that were added to it. */
function chaptersOf(
  page: readonly Item[],
): readonly { readonly chapter: string; readonly items: readonly FigureItem[] }[] {
  const parts: { chapter: string; items: FigureItem[] }[] = [];
  for (const item of page)
    if (item.type === 'chapter') parts.push({ chapter: item.chapter, items: [] });
    else parts.at(-1)?.items.push(item);
  return parts;
}
customElements.define('notebook-page', NotebookPage);
declare global {
  interface HTMLElementTagNameMap {
    'notebook-page': NotebookPage;
  }
}
