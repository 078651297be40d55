import { LitElement } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { Store } from '../notebook/store.ts';

/**
 * A part of the page. It shares the page's one style sheet (no shadow root), looks at the cells it names while it is
 * on the page, and draws itself anew when one of them changes.
 */
export abstract class Piece extends LitElement {
  static override properties: Record<string, object> = { store: { attribute: false } };
  declare store: Store;
  private unwatch: (() => void) | undefined;
  private watching: readonly Cell[] = [];
  private watchedIn: Store | undefined;

  /** The cells it reads. */
  protected watched(): readonly Cell[] {
    return [];
  }
  protected override createRenderRoot(): HTMLElement {
    return this;
  }
  protected override willUpdate(): void {
    const now = this.watched();
    const { store } = this;
    const isSame = store === this.watchedIn && now.length === this.watching.length;
    if (this.unwatch && isSame && now.every((c, i) => c === this.watching[i])) return;
    const before = this.unwatch;
    this.watching = now;
    this.watchedIn = store;
    this.unwatch = store.watch(now, () => this.requestUpdate());
    before?.();
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatch?.();
    this.unwatch = undefined;
  }
  override connectedCallback(): void {
    super.connectedCallback();
    this.requestUpdate();
  }
}
