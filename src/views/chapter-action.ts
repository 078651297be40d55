import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { Action, Search, Settings } from '../graph/chapter.ts';
import { NotSettled } from '../graph/snapshot.ts';
import { solve, type Solution } from '../graph/solve.ts';
import { Impossible, lastGood } from '../graph/state.ts';
import { say } from '../units/phrase.ts';
import { tidy } from '../units/unit.ts';
import { Piece } from './piece.ts';
import { groundParts, isSlowWay, Seeker } from './seeker.ts';
import { lower, withUnit } from './words.ts';

/** <chapter-action>: a button that is called what it will do, which is one step back; what it waits for, and what came of it. */
export class ChapterAction extends Piece {
  static override properties = {
    ...Piece.properties,
    action: { attribute: false },
    said: { state: true },
  };
  declare action: Action;
  /** What came of it, and the notebook of which that is true. */
  declare said: { readonly words: string; readonly of: readonly unknown[] } | null;
  private readonly seeker = new Seeker(this);
  private search: Search | null = null;

  constructor() {
    super();
    this.said = null;
  }
  protected override watched(): readonly Cell[] {
    return Object.values(this.action.from);
  }
  private get given(): never {
    const { action, store } = this;
    return Object.fromEntries(
      Object.entries(action.from).map(([name, cell]) => [name, lastGood(store.state(cell))]),
    ) as never;
  }
  /** The first of what it reads that has no settled value. */
  private get unsettled(): Cell | undefined {
    return Object.values(this.action.from).find((c) => this.store.state(c).is !== 'ready');
  }

  protected override render(): TemplateResult {
    const { unsettled } = this;
    const named = this.named();
    const seeking = this.search && this.seeker.of(this.search);
    const done = seeking?.is === 'waiting' ? seeking.done : null;
    return html`<div class="do" id=${this.action.id}>
      <button
        class="button"
        ?disabled=${unsettled !== undefined || named.fault !== undefined || done !== null}
        @click=${() => this.act()}
      >
        ${named.label}
      </button>
      <small>${this.action.note}</small>
      ${unsettled ? this.waits(unsettled) : named.fault ? html`<small>${named.fault}</small>` : nothing}
      ${done === null ? nothing : this.progress(done)}
      ${seeking?.is === 'fault' ? html`<small role="alert">${say(seeking.message, this.store.system)}</small>` : nothing}
      <small role="status">${this.isSaidOfNow ? this.said!.words : ''}</small>
    </div>`;
  }
  /** What the button is called, from the last good figures; and why it cannot be pressed, if that is so. */
  private named(): { readonly label: string; readonly fault?: string } {
    const { action, store, given } = this;
    const plain = action.short ?? 'Not yet';
    if (Object.values(given).some((value) => value === undefined)) return { label: plain };
    let label = plain;
    try {
      label = action.label(given);
      if (!action.solves(given)) action.sets(given, NaN);
      return { label };
    } catch (error) {
      if (!(error instanceof Impossible)) throw error;
      return { label, fault: say(error.phrase, store.system) };
    }
  }
  private waits(cell: Cell): TemplateResult {
    const { store } = this;
    const state = store.state(cell);
    const about = state.is === 'fault' ? store.catalogue.cells.get(state.fault.about) : undefined;
    const at = about ?? cell;
    return html`<small>It waits for <a href="#${at.id}">${lower(at.label)}</a>.</small>`;
  }
  private progress(done: number): TemplateResult {
    const percent = Math.round(done * 100);
    return html`<div class="bar" style="--done:${percent}%"></div>
      <small
        >Looking for it: ${percent} %. <button class="link" @click=${() => this.seeker.stop()}>stop</button></small
      >`;
  }
  private get isSaidOfNow(): boolean {
    const { said, store } = this;
    return said !== null && groundParts(store.document).every((part, i) => part === said.of[i]);
  }
  private tell(words: string): void {
    this.said = { words, of: groundParts(this.store.document) };
  }

  private act(): void {
    const { action, store, given } = this;
    try {
      this.search = action.solves(given);
      if (!this.search) return this.tell(this.write(action.sets(given, NaN)));
      const { vary, read, target, range } = this.search;
      if (isSlowWay(store, this.search)) this.seeker.seek(this.search, (solution) => this.came(solution));
      else this.came(solve(store.snapshot(), read, target, vary, range));
    } catch (error) {
      if (error instanceof Impossible) this.tell(say(error.phrase, store.system));
      else if (error instanceof NotSettled) this.tell(`It waits for ${lower(error.cell.label)}.`);
      else throw error;
    }
  }
  /** Takes the answer that is nearest to what stands now. */
  private came({ values, nearest }: Solution): void {
    const { store } = this;
    const { vary, read } = this.search!;
    const now = lastGood(store.state(vary)) ?? 0;
    const [found] = values.toSorted((a, b) => Math.abs(a - now) - Math.abs(b - now));
    if (found === undefined)
      return this.tell(
        nearest
          ? `Out of reach: the nearest is ${withUnit(store, read, nearest.gives)}, with ${lower(vary.label)} at ${withUnit(store, vary, nearest.at)}. Nothing was set.`
          : 'There is no answer in reach. Nothing was set.',
      );
    const set = this.write(this.action.sets(this.given, tidy(found)));
    this.tell(`Found: ${lower(vary.label)} ${withUnit(store, vary, found)}. ${set}`);
  }
  /** Sets the fields, and says so. */
  private write(settings: Settings): string {
    const { action, store } = this;
    const news = settings.filter(([input, value]) => {
      const state = store.state(input);
      return state.is !== 'ready' || !input.kind.same(state.value, value);
    });
    if (news.length === 0) return 'It stands so already.';
    store.set(news, {
      what: action.did ?? `Done: ${lower(action.label(this.given))}`,
      place: news[0]![0].id,
      announce: true,
    });
    return 'It is set.';
  }
}
customElements.define('chapter-action', ChapterAction);
declare global {
  interface HTMLElementTagNameMap {
    'chapter-action': ChapterAction;
  }
}
