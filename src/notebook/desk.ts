import type { Catalogue } from './catalogue.ts';
import type { Document } from './document.ts';
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
  /** Takes the link out of the page's address. */
  readonly forgetLink: () => void;
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
  /** What a newer release wrote is looked at, not overwritten. */
  private readOnly = false;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(options: Options) {
    this.at = options;
  }

  /** What to open: a link's copy if there is one, else what the reader had, else the example. */
  async begin(hash: string): Promise<Open> {
    const mine = this.at.slots.mine();
    const open = mine ? await this.own(mine) : { document: this.at.example, opened: this.at.example };
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
    store.watchAll(() => {
      clearTimeout(this.timer);
      this.timer = setTimeout(() => this.save(), 400);
    });
  }
  /** Saves at once. */
  save(): void {
    clearTimeout(this.timer);
    if (!this.store || this.readOnly) return;
    const open: Open = { document: this.store.document, opened: this.store.opened };
    const fault = this.visit === null ? this.at.slots.save(open) : this.at.slots.saveVisit(this.visit, open);
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
    if (this.visit === null) this.putAside();
    this.readOnly = newer;
    this.store?.open(document, what);
    if (repairs.length > 0) this.note(repairs.join(' '));
  }
  /** Opens the link of an address that changed under the page. */
  async follow(hash: string): Promise<void> {
    if (!isLink(hash) || hash === this.visit) return;
    const link = await this.unpack(hash);
    if (link && 'fault' in link) return this.note(link.fault);
    if (!link) return;
    this.save();
    const { document } = await this.visited(link.saved, hash);
    this.store?.open(document, 'Opened a link');
    this.tell();
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
    this.readOnly = newer;
    if (repairs.length > 0) this.note(repairs.join(' '));
    return { document, opened: mine.opened === undefined ? document : (await this.mended(mine.opened)).document };
  }
  /** A link opens as a copy; what the reader had stays where it is. */
  private async visited(saved: unknown, hash: string): Promise<Open> {
    const { catalogue, slots, release } = this.at;
    const { document, repairs, newer } = await this.mended(saved);
    const edited = slots.visit(hash);
    const { whatChanged } = await import('./answers.ts');
    this.readOnly = newer;
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
    this.readOnly = false;
    this.at.forgetLink();
    this.putAside();
    this.save();
  }
  private async back(): Promise<void> {
    this.visit = null;
    this.at.forgetLink();
    const mine = this.at.slots.mine();
    this.notices = [];
    const { document } = mine ? await this.own(mine) : { document: this.at.example };
    this.store?.open(document, 'Went back to my notebook');
    this.tell();
  }
  /** Keeps what is in the reader's slot within reach before something else goes there. */
  private putAside(): void {
    const aside = this.at.slots.putAside();
    this.notices = [];
    if (aside) {
      const notice: Notice = {
        text: 'Your notebook from before is put aside.',
        actions: [
          { label: 'Get it back', act: () => void this.takeBack(aside, notice) },
          { label: 'Dismiss', act: () => this.drop(notice) },
        ],
      };
      this.notices = [notice];
    }
    this.tell();
  }
  private async takeBack(aside: Kept, notice: Notice): Promise<void> {
    const { document } = await this.mended(aside.document);
    this.store?.open(document, 'Got my notebook back');
    this.drop(notice);
  }
}

const isLink = (hash: string): boolean => /^#?\d+\./.test(hash);
