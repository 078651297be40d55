import type { ReactiveController } from 'lit';
import type { Document } from '../notebook/document.ts';
import { type Answer, answerOf, askElsewhere, type Said } from '../notebook/guide-answer.ts';
import type { Question, Way } from '../notebook/guide.ts';
import type { Piece } from './piece.ts';

/** What the reader chose, and what is said of it. */
export interface Told {
  readonly chosen: Way;
  readonly text: string;
}

/** Answers a guide's question from the notebook as it stands; elsewhere, if that takes long. An edit ends it. */
export class Asker implements ReactiveController {
  /** A question that is being worked out: what the reader chose, and the share done. */
  asking: { readonly chosen: Way; readonly done: number } | null = null;
  told: Told | null = null;
  private readonly host: Piece;
  private halt: (() => void) | null = null;
  /** What was worked out, of what stood then. */
  private found: Answer | null = null;
  private document: Document | undefined;

  constructor(host: Piece) {
    this.host = host;
    host.addController(this);
  }
  hostUpdate(): void {
    if (this.isOutdated) this.forget();
  }
  hostDisconnected(): void {
    this.forget();
  }

  ask(question: Question, chosen: Way): void {
    const { store } = this.host;
    if (this.isOutdated) this.forget();
    if (this.asking) this.asking = { ...this.asking, chosen };
    else {
      this.document = store.document;
      const found = this.found ?? answerOf(store, question);
      if (found === null) this.askElsewhere(question, chosen);
      else this.tell(question, chosen, found);
    }
    this.host.requestUpdate();
  }
  /** Stops working it out. */
  stop(): void {
    this.halt?.();
    this.halt = null;
    this.asking = null;
    this.host.requestUpdate();
  }
  /** Stops, and forgets what was said. */
  forget(): void {
    if (!this.asking && !this.told && !this.found) return;
    this.stop();
    this.told = null;
    this.found = null;
  }
  private get isOutdated(): boolean {
    return this.host.store.document !== this.document;
  }

  private askElsewhere(question: Question, chosen: Way): void {
    this.told = null;
    this.asking = { chosen, done: 0 };
    this.halt = askElsewhere(this.host.store, question, {
      done: (done) => {
        if (this.asking) this.asking = { ...this.asking, done };
        this.host.requestUpdate();
      },
      said: (found) => {
        this.tell(question, this.asking?.chosen ?? chosen, found);
        this.halt = null;
        this.asking = null;
        this.host.requestUpdate();
      },
    });
  }
  private tell(question: Question, chosen: Way, found: Said): void {
    if (typeof found === 'string') {
      this.told = { chosen, text: found };
      return;
    }
    this.found = found;
    const word = found.way === chosen ? question.right : question.wrong;
    this.told = { chosen, text: `${word} ${found.figures} ${question.because[found.way]}` };
  }
}
