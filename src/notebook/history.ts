import { applyPatches, enablePatches, type Patch, produceWithPatches, type Draft } from 'immer';
import type { Document } from './document.ts';

enablePatches();

/** One step back: what one gesture did, in which variant and at which cell or item. */
interface Step {
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
  readonly chosen: string | null;
  readonly place: string | null;
  readonly what: string;
  readonly gesture: unknown;
}

export interface Edit {
  /** What happened, in words: "Set bore to 4.070 in". */
  readonly what: string;
  readonly place?: string;
  /** Worth a line across the page, with a way back: it did more than change the figure under the hand. */
  readonly announce?: boolean;
  /** Edits of one gesture (pointer down to up, focus to blur) are one step. */
  readonly gesture?: unknown;
}

const deepest = 500;

/** What is open: the document as it stands, and as it was opened (where reset goes back to). */
export interface Open {
  readonly document: Document;
  readonly opened: Document;
}

/** An open document with undo and redo, as patches both ways. */
export class History {
  private now: Open;
  private readonly back: Step[] = [];
  private readonly forth: Step[] = [];

  constructor(open: Open) {
    this.now = open;
  }
  get document(): Document {
    return this.now.document;
  }
  get opened(): Document {
    return this.now.opened;
  }
  get undoWhat(): string | null {
    return this.back.at(-1)?.what ?? null;
  }
  get redoWhat(): string | null {
    return this.forth.at(-1)?.what ?? null;
  }

  /** Another document in place of this one, with no way back to it. */
  restart(open: Open): void {
    this.now = open;
    this.back.length = 0;
    this.forth.length = 0;
  }
  /** Changes the document; false if nothing changed. */
  edit(recipe: (draft: Draft<Open>) => void, { what, place, gesture }: Edit): boolean {
    const [next, patches, inverse] = produceWithPatches(this.now, recipe);
    if (patches.length === 0) return false;
    const last = this.back.at(-1);
    const { chosen } = this.now.document;
    this.now = next;
    this.forth.length = 0;
    if (last && gesture !== undefined && last.gesture === gesture && last.chosen === chosen)
      this.back[this.back.length - 1] = {
        ...last,
        what,
        patches: [...last.patches, ...patches],
        inverse: [...inverse, ...last.inverse],
      };
    else {
      this.back.push({ patches, inverse, chosen, place: place ?? null, what, gesture });
      if (this.back.length > deepest) this.back.shift();
    }
    return true;
  }

  /** Looks at another variant: no step of its own. */
  choose(chosen: string | null): void {
    this.now = { ...this.now, document: { ...this.now.document, chosen } };
  }

  /** Takes back the last step and looks where it happened. */
  undo(): Pick<Step, 'place' | 'what'> | null {
    return this.travel(this.back, this.forth, 'inverse');
  }
  redo(): Pick<Step, 'place' | 'what'> | null {
    return this.travel(this.forth, this.back, 'patches');
  }
  private travel(from: Step[], to: Step[], way: 'patches' | 'inverse'): Pick<Step, 'place' | 'what'> | null {
    const step = from.pop();
    if (!step) return null;
    const next = applyPatches(this.now, step[way] as Patch[]);
    // A step that opened another document, done again, looks where that document looks.
    const looks =
      way === 'patches' &&
      step.patches.some(({ path }) => path[0] === 'document' && (path.length === 1 || path[1] === 'chosen'));
    const there = step.chosen === null || next.document.variants.some((v) => v.id === step.chosen);
    this.now = looks || !there ? next : { ...next, document: { ...next.document, chosen: step.chosen } };
    to.push({ ...step, gesture: undefined });
    return { place: step.place, what: step.what };
  }
}
