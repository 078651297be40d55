import type { Catalogue } from './catalogue.ts';
import type { Document } from './document.ts';
import { isLink } from './glance.ts';
import type { Open } from './history.ts';
import type { Restored } from './restore.ts';
import type { Kept, Slots } from './slots.ts';
import type { Store } from './store.ts';

/** A line with what happened, and what can be done about it. */
export interface Notice {
  readonly text: string;
  readonly actions: readonly { readonly label: string; readonly act: () => void }[];
}
interface Options {
  readonly catalogue: Catalogue;
  /** What a first visit opens. */
  readonly example: Document;
  readonly slots: Slots;
  readonly release: string;
  /** Puts a link into the page's address, or takes it out with null. */
  readonly address: (fragment: string | null) => void;
}

/**
 * Whose notebook is open, and where it is kept: the reader's own in one slot of the browser, or a copy that came with a
 * link, which never touches that slot until the reader says so. What the first screen does not need is imported when it
 * is asked for.
 */
export class Desk {
  notices: readonly Notice[] = [];
  /** Where the last save went, in words. */
  saved = '';
  private readonly at: Options;
  private store: Store | undefined;
  private tell: () => void = () => {};
  /** The fragment of the link whose copy is open; null is the reader's own. */
  private visit: string | null = null;
  /** What a newer release wrote, as it was opened: it is looked at, not overwritten. Text, since a step back makes copies. */
  private newer: string | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** The document as it is kept already: a tab in which nothing was edited overwrites nothing when it is closed. */
  private kept: Document | null = null;

  constructor(options: Options) {
    this.at = options;
  }

  /** What to open: a link's copy if there is one, else what the reader had, else the example. */
  async begin(hash: string): Promise<Open> {
    const mine = this.at.slots.mine();
    const open = mine ? await this.own(mine) : { document: this.at.example, opened: this.at.example };
    const aside = this.at.slots.aside();
    if (aside) this.offer(aside, true);
    const link = isLink(hash) ? await this.unpack(hash) : null;
    if (!link) return open;
    if ('saved' in link) return this.visited(link.saved, hash);
    this.note(`${link.fault} What you had is shown instead.`);
    return open;
  }
  /** From now on the open notebook is this store's: every change is saved; `tell` hears of notices and saves. */
  sit(store: Store, tell: () => void): void {
    this.store = store;
    this.tell = tell;
    this.kept = store.document;
    store.watchAll(() => {
      clearTimeout(this.timer);
      this.timer = setTimeout(() => this.save(), 400);
    });
  }
  /** Saves at once. */
  save(): void {
    clearTimeout(this.timer);
    if (!this.store || this.store.document === this.kept) return;
    const open: Open = { document: this.store.document, opened: this.store.opened };
    if (this.newer !== null && this.newer === JSON.stringify(open.opened)) return;
    const fault = this.visit === null ? this.at.slots.save(open) : this.at.slots.saveVisit(this.visit, open);
    if (fault === null) this.kept = open.document;
    this.saved =
      fault ?? (this.visit === null ? 'Saved in this browser.' : 'This copy is kept until its tab is closed.');
    this.tell();
  }

  /** The present state as a link's fragment, with what its answers are here. */
  async fragment(): Promise<string> {
    const { pack } = await import('./link.ts');
    return pack(await this.withAnswers(), this.at.example);
  }
  /** The present state as a file's text. */
  async file(): Promise<string> {
    return `${JSON.stringify(await this.withAnswers(), null, 2)}\n`;
  }
  /** Opens what a file or a starting point holds; what the reader had is put aside. */
  async open(saved: unknown, what: string): Promise<void> {
    const { document, repairs, newer } = await this.mended(saved);
    this.save();
    if (this.visit === null) this.putAside();
    this.guard(newer, document);
    this.store?.open(document, what);
    if (repairs.length > 0) this.note(repairs.join(' '));
  }
  /** Opens the link of an address that changed under the page; without one, the reader's own. */
  async follow(hash: string): Promise<void> {
    if (hash === this.visit) return;
    if (!isLink(hash)) {
      if (this.visit === null) return;
      // A jump on the page leaves the link in the address: a reload is to find it there.
      if (hash !== '') return this.at.address(this.visit);
      return this.back();
    }
    const link = await this.unpack(hash);
    if (link && 'fault' in link) return this.note(link.fault);
    if (!link) return;
    this.save();
    this.show(await this.visited(link.saved, hash));
  }
  /** The chapters that are open: as the reader left them, or these on a first visit. */
  opened(otherwise: readonly string[]): ReadonlySet<string> {
    return this.at.slots.opened() ?? new Set(otherwise);
  }
  saveOpened(chapters: readonly string[]): void {
    this.at.slots.saveOpened(chapters);
  }
  /** Says something that the reader can dismiss. */
  note(text: string): void {
    const notice: Notice = { text, actions: [{ label: 'Dismiss', act: () => this.drop(notice) }] };
    this.notices = [notice, ...this.notices];
    this.tell();
  }

  private guard(newer: boolean, opened: Document): void {
    if (newer) this.newer = JSON.stringify(opened);
  }
  private drop(notice: Notice): void {
    this.notices = this.notices.filter((n) => n !== notice);
    this.tell();
  }
  private async unpack(hash: string) {
    return (await import('./link.ts')).unpack(hash);
  }
  private async mended(anything: unknown): Promise<Restored> {
    return (await import('./restore.ts')).restore(anything, this.at.catalogue, this.at.example);
  }
  private async withAnswers(): Promise<Document> {
    const { answersOf } = await import('./answers.ts');
    return { ...this.store!.document, answers: answersOf(this.store!, this.at.release) };
  }
  private async own(mine: Kept): Promise<Open> {
    const { document, repairs, newer } = await this.mended(mine.document);
    const opened = mine.opened === undefined ? document : (await this.mended(mine.opened)).document;
    this.guard(newer, opened);
    if (repairs.length > 0) this.note(repairs.join(' '));
    return { document, opened };
  }
  /** A link opens as a copy; what the reader had stays where it is. */
  private async visited(saved: unknown, hash: string): Promise<Open> {
    const { catalogue, slots, release } = this.at;
    const { document, repairs, newer } = await this.mended(saved);
    const edited = slots.visit(hash);
    const { whatChanged } = await import('./answers.ts');
    this.guard(newer, document);
    this.visit = hash;
    const news = edited ? [] : whatChanged(catalogue, document, release);
    this.notices = [
      {
        text: ['This is a copy from a link. What you had before is kept.', ...repairs, ...news].join(' '),
        actions: [
          { label: 'Keep as mine', act: () => this.keep() },
          { label: 'Back to mine', act: () => void this.back() },
        ],
      },
    ];
    return { document: edited ? (await this.mended(edited.document)).document : document, opened: document };
  }
  /** The copy becomes the reader's own; what that was is put aside, not away. */
  private keep(): void {
    this.visit = null;
    this.newer = null;
    this.kept = null;
    this.at.address(null);
    this.putAside();
    this.save();
  }
  private async back(): Promise<void> {
    this.save(); // the copy, while it still goes to the copy's slot
    const mine = this.at.slots.mine();
    this.notices = [];
    const open = mine ? await this.own(mine) : { document: this.at.example, opened: this.at.example };
    this.visit = null;
    this.at.address(null);
    this.show(open);
  }
  /** Shows a notebook that is kept in another place than the one before. */
  private show(open: Open): void {
    this.store?.renew(open);
    this.kept = open.document;
    this.tell();
  }
  /** Keeps what is in the reader's slot within reach before something else goes there. */
  private putAside(): void {
    const put = this.at.slots.putAside();
    this.notices = [];
    if (put) this.offer(put.aside, put.isKept);
    this.tell();
  }
  private offer(aside: Kept, isKept: boolean): void {
    const away = (): void => {
      this.at.slots.dropAside();
      this.drop(notice);
    };
    const notice: Notice = {
      text: isKept
        ? 'Your notebook from before is put aside.'
        : 'Your notebook from before is put aside, but only until you leave this page: this browser has no room to keep it.',
      actions: [
        { label: 'Get it back', act: () => void this.takeBack(aside).then(away) },
        { label: 'Let it go', act: away },
      ],
    };
    this.notices = [...this.notices, notice];
  }
  private async takeBack(aside: Kept): Promise<void> {
    const { document, newer } = await this.mended(aside.document);
    this.guard(newer, document);
    this.store?.open(document, 'Got my notebook back');
  }
}
