import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Cell } from '../graph/cell.ts';
import type { Explorer } from '../graph/explorer.ts';
import type { SweepItem } from '../notebook/document.ts';
import { longestLink } from '../notebook/link.ts';
import { Piece } from './piece.ts';
import { when } from './words.ts';
import './chapter-section.ts';
import './number-field.ts';
import './share-panel.ts';
import './summary-strip.ts';
import './verdict-note.ts';

/** A notebook to start from. */
export interface StartingPoint {
  readonly id: string;
  readonly title: string;
  readonly sentence: string;
}
/** A line across the page with what happened, and what can be done about it. */
export interface Notice {
  readonly text: string;
  readonly actions: readonly { readonly label: string; readonly act: () => void }[];
}

/** <notebook-page>: the whole page. What concerns more than the notebook itself it asks for with events. */
export class NotebookPage extends Piece {
  static override properties = {
    ...Piece.properties,
    starts: { attribute: false },
    notices: { attribute: false },
    explorer: { attribute: false },
    fragment: { attribute: false },
    saved: {},
    sharing: { state: true },
  };
  declare starts: readonly StartingPoint[];
  declare notices: readonly Notice[];
  declare explorer: Explorer | null;
  declare fragment: string | null;
  declare saved: string;
  declare sharing: boolean;
  private unwatchAll: (() => void) | undefined;

  constructor() {
    super();
    this.starts = [];
    this.notices = [];
    this.explorer = null;
    this.fragment = null;
    this.saved = '';
    this.sharing = false;
  }
  override connectedCallback(): void {
    super.connectedCallback();
    this.unwatchAll = this.store.watchAll(() => this.requestUpdate());
    document.addEventListener('keydown', this.key);
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatchAll?.();
    document.removeEventListener('keydown', this.key);
  }
  private cell(id: string): Cell {
    return this.store.catalogue.cells.get(id)!;
  }
  private readonly key = (event: KeyboardEvent): void => {
    const typing =
      event.target instanceof HTMLInputElement && event.target.type !== 'range' && event.target.type !== 'radio';
    if (!(event.ctrlKey || event.metaKey) || event.altKey || typing) return;
    const redo = event.key.toLowerCase() === 'y' || (event.key.toLowerCase() === 'z' && event.shiftKey);
    if (!redo && event.key.toLowerCase() !== 'z') return;
    event.preventDefault();
    this.travel(redo ? this.store.redo() : this.store.undo());
  };
  /** Shows where a step that was taken back or done again happened. */
  private travel(step: { readonly place: string | null } | null): void {
    if (!step?.place) return;
    const place = document.getElementById(step.place);
    place?.scrollIntoView({ block: 'nearest' });
    place?.classList.remove('washed');
    requestAnimationFrame(() => place?.classList.add('washed'));
  }
  private ask(type: string, detail?: string): void {
    this.dispatchEvent(new CustomEvent(type, { detail }));
  }

  protected override render(): TemplateResult {
    const { store } = this;
    const { document: notebook } = store;
    return html`<a class="skip sans" href="#three">Skip to the three that decide</a>
      <nav class="strip" aria-label="Pinned answers and tools">
        <div class="strip-in">
          <a class="mark" href="#top">Closing Angle</a>
          <summary-strip .store=${store}></summary-strip>
          ${this.toolbar()}
        </div>
      </nav>
      <main class="page" id="top">
        ${this.notices.map(
          (n) =>
            html`<div class="notice" role="status">
              <p>${n.text}</p>
              ${n.actions.map((a) => html`<button class="button" @click=${a.act}>${a.label}</button>`)}
            </div>`,
        )}
        ${when(this.sharing, () => html`<share-panel .fragment=${this.fragment} .longest=${longestLink} @save-file=${() => this.ask('save-file')} @open-file=${() => this.ask('open-file')}></share-panel>`)}
        <section class="opening split" aria-labelledby="title">
          <header>
            <p class="kicker">A notebook for one short block</p>
            <h1 id="title">${notebook.title}</h1>
          </header>
          <div class="lead">
            <div class="three" id="three" role="group" aria-label="The three that decide it">
              <number-field
                .plain=${true}
                .name=${'three'}
                .store=${store}
                .cell=${this.cell('chamberVolume')}
              ></number-field>
              <number-field
                .plain=${true}
                .name=${'three'}
                .store=${store}
                .cell=${this.cell('intakeClosing')}
              ></number-field>
              <choice-field
                .plain=${true}
                .name=${'three'}
                .store=${store}
                .cell=${this.cell('fuelGrade')}
              ></choice-field>
            </div>
            <verdict-note
              .store=${store}
              .here=${this.cell('fuelVerdict')}
              .low=${this.cell('fuelVerdictLow')}
            ></verdict-note>
          </div>
          <div class="note">
            <p class="first">${notebook.sentence}</p>
            <p>Whatever is set in <b class="blue">blue</b> is yours to move. Everything else follows.</p>
            ${this.variants()}
          </div>
          ${this.startList()}
        </section>
        ${this.chapters()}
        <p class="cautions">
          These figures are planning aids. Knock breaks pistons. Measure chamber, deck and gasket volumes on the real
          parts, and check piston-to-valve clearance on the real engine before it turns. Emission and noise rules are
          local. A qualified engine builder and local rules decide.
        </p>
        <p class="saved" role="status">${this.saved}</p>
      </main>`;
  }

  private toolbar(): TemplateResult {
    const { store } = this;
    const si = store.system === 'si';
    const units = (): void =>
      store.change({ what: `Showed ${si ? 'US' : 'SI'} units` }, (draft) => {
        draft.units.system = si ? 'us' : 'si';
      });
    return html`<div class="toolbar" role="group" aria-label="Notebook">
      <button
        ?disabled=${store.canUndo === null}
        title=${store.canUndo ?? nothing}
        @click=${() => this.travel(store.undo())}
      >
        Undo
      </button>
      <button
        ?disabled=${store.canRedo === null}
        title=${store.canRedo ?? nothing}
        @click=${() => this.travel(store.redo())}
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
    this.sharing = !this.sharing;
    if (this.sharing) this.ask('share');
  }

  /** The alternatives that this notebook holds. */
  private variants(): TemplateResult | typeof nothing {
    const { store } = this;
    const { variants, chosen } = store.document;
    if (variants.length === 0) return nothing;
    return html`<ul class="chips" aria-label="Variants">
        ${variants.map(
          (v) =>
            html`<li>
              <button aria-pressed=${v.id === chosen} @click=${() => store.choose(v.id)}>${v.name}</button>
            </li>`,
        )}
      </ul>
      <p class="quiet">What you change belongs to the variant that is chosen.</p>`;
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
                  href="?start=${s.id}"
                  @click=${(e: Event) => {
                    e.preventDefault();
                    this.ask('start', s.id);
                  }}
                  ><b>${s.title}</b><span>${s.sentence}</span></a
                >
              </li>`,
          )}
      </ul>
    </nav>`;
  }

  /** Chapters in the order of the page, each with the sweeps that follow it. */
  private chapters(): TemplateResult {
    const { store } = this;
    const parts: { readonly id: string; readonly sweeps: SweepItem[] }[] = [];
    for (const item of store.document.page)
      if (item.type === 'chapter') parts.push({ id: item.chapter, sweeps: [] });
      else parts.at(-1)?.sweeps.push(item);
    return html`${repeat(
      parts,
      (p) => p.id,
      (p) =>
        html`<chapter-section
            .store=${store}
            .chapter=${store.catalogue.chapters.find((c) => c.id === p.id)!}
            .sweeps=${p.sweeps}
            .explorer=${this.explorer}
          ></chapter-section>
          <p class="add"><button class="link" @click=${() => this.addSweep(p.id)}>Add a sweep here</button></p>`,
    )}`;
  }
  private addSweep(chapter: string): void {
    const { store } = this;
    const { page } = store.document;
    let n = 1;
    while (page.some((p) => p.id === `sweep${n}`)) n++;
    const closing = this.cell('intakeClosing');
    const [from, to] = closing.slider!;
    store.change({ what: 'Added a sweep', place: `sweep${n}` }, (draft) => {
      const at = draft.page.findIndex((p) => p.type === 'chapter' && p.chapter === chapter);
      let next = at + 1;
      while (draft.page[next]?.type === 'sweep') next++;
      draft.page.splice(next, 0, {
        id: `sweep${n}`,
        type: 'sweep',
        read: 'dynamicRatio',
        vary: 'intakeClosing',
        from,
        to,
      });
    });
  }
}
customElements.define('notebook-page', NotebookPage);
declare global {
  interface HTMLElementTagNameMap {
    'notebook-page': NotebookPage;
  }
}
