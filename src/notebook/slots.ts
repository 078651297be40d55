import type { Open } from './history.ts';

const mineKey = 'closing-angle/mine';
const asideKey = 'closing-angle/aside';
const visitKey = 'closing-angle/visit';
const openedKey = 'closing-angle/opened';

/** What a slot held, not yet made sense of: `restore` does that. */
export interface Kept {
  readonly document: unknown;
  readonly opened: unknown;
  /** Whose copy it is: the link's fragment. */
  readonly fragment?: unknown;
}

/**
 * The browser's storage as slots: the reader's own notebook, the one put aside when another took its place, and, for
 * this tab alone, the copy that came with a link. Either storage may be missing or full: that is said, never thrown.
 */
export class Slots {
  private readonly local: Storage | null;
  private readonly session: Storage | null;
  constructor(local: Storage | null, session: Storage | null) {
    this.local = local;
    this.session = session;
  }

  mine(): Kept | undefined {
    return read(this.local, mineKey);
  }
  /** Saves the reader's own notebook, or says in a sentence why not. */
  save(open: Open): string | null {
    return write(this.local, mineKey, open);
  }
  /** The edited copy of the link with this fragment, if this tab has one. */
  visit(fragment: string): Kept | undefined {
    const kept = read(this.session, visitKey);
    return kept?.fragment === fragment ? kept : undefined;
  }
  saveVisit(fragment: string, open: Open): string | null {
    return write(this.session, visitKey, { ...open, fragment });
  }
  /** The chapters that were open when the reader last turned one, or undefined on a first visit. */
  opened(): ReadonlySet<string> | undefined {
    try {
      const text = this.local?.getItem(openedKey);
      return text === null || text === undefined ? undefined : new Set(text.split(' '));
    } catch {
      return undefined;
    }
  }
  saveOpened(chapters: readonly string[]): void {
    try {
      this.local?.setItem(openedKey, chapters.join(' '));
    } catch {
      // They open as on a first visit next time.
    }
  }
  /** Moves the reader's own notebook out of the way; returns it, and whether there was room to keep it. */
  putAside(): { readonly aside: Kept; readonly isKept: boolean } | null {
    const aside = this.mine();
    return aside ? { aside, isKept: write(this.local, asideKey, aside) === null } : null;
  }
  /** What was put aside, on this visit or one before. */
  aside(): Kept | undefined {
    return read(this.local, asideKey);
  }
  dropAside(): void {
    try {
      this.local?.removeItem(asideKey);
    } catch {
      // It will be offered once more.
    }
  }
}

function read(storage: Storage | null, key: string): Kept | undefined {
  try {
    const text = storage?.getItem(key);
    if (!text) return undefined;
    const kept = JSON.parse(text) as Kept | null;
    return kept?.document === undefined ? undefined : kept;
  } catch {
    return undefined;
  }
}

function write(storage: Storage | null, key: string, what: object): string | null {
  if (!storage) return 'This browser keeps nothing for this page. Save a file, or copy the link, before you leave.';
  try {
    storage.setItem(key, JSON.stringify(what));
    return null;
  } catch {
    return 'The browser’s storage is full, so this is not saved. Save a file, or copy the link, before you leave.';
  }
}
