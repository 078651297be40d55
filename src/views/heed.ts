import type { ReactiveController } from 'lit';
import type { Store } from '../notebook/store.ts';
import type { Piece } from './piece.ts';

/** Has an element drawn anew after any change of its notebook, whichever store holds it. */
export class Heed implements ReactiveController {
  private readonly host: Piece;
  private store: Store | undefined;
  private unwatch: (() => void) | undefined;

  constructor(host: Piece) {
    this.host = host;
    host.addController(this);
  }
  hostUpdate(): void {
    const { store } = this.host;
    if (store === this.store) return;
    this.unwatch?.();
    this.store = store;
    this.unwatch = store.watchAll(() => this.host.requestUpdate());
  }
  hostDisconnected(): void {
    this.unwatch?.();
    this.unwatch = undefined;
    this.store = undefined;
  }
}
