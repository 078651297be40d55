import type { ReactiveController } from 'lit';
import type { Document } from '../notebook/document.ts';
import type { Piece } from './piece.ts';

const restful = 500; // ms

/** Whether the notebook has been left alone for a moment. Results that arrive do not disturb it, edits do. */
export class Rest implements ReactiveController {
  isAtRest = false;
  private readonly host: Piece;
  private document: Document | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private unwatch: (() => void) | undefined;

  constructor(host: Piece) {
    this.host = host;
    host.addController(this);
  }
  hostUpdated(): void {
    this.unwatch ??= this.host.store.watchAll(() => this.look());
    this.look();
  }
  hostDisconnected(): void {
    this.unwatch?.();
    this.unwatch = undefined;
    clearTimeout(this.timer);
  }
  private look(): void {
    const { document } = this.host.store;
    if (document === this.document) return;
    this.document = document;
    if (this.isAtRest) this.turn(false);
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.turn(true), restful);
  }
  private turn(isAtRest: boolean): void {
    this.isAtRest = isAtRest;
    this.host.requestUpdate();
  }
}
