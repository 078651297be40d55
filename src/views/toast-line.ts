import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Store } from '../notebook/store.ts';

const stays = 6000; // ms

/** <toast-line>: what just happened, and one way back. It stays while the pointer or the focus is on it. */
export class ToastLine extends LitElement {
  static override properties = { store: { attribute: false }, what: { state: true } };
  declare store: Store;
  declare what: string | null;
  private timer = 0;
  private unwatch: (() => void) | undefined;

  constructor() {
    super();
    this.what = null;
  }
  protected override createRenderRoot(): HTMLElement {
    return this;
  }
  override connectedCallback(): void {
    super.connectedCallback();
    // An element that is defined after it was made has its properties only once it has updated.
    void this.updateComplete.then(() => {
      if (!this.isConnected) return;
      this.unwatch ??= this.store.watchAnnounced((what) => {
        this.what = what;
        this.leave();
      });
    });
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatch?.();
    this.unwatch = undefined;
    clearTimeout(this.timer);
  }
  private stay(): void {
    clearTimeout(this.timer);
  }
  private leave(): void {
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => {
      if (this.matches(':hover') || this.contains(document.activeElement)) this.leave();
      else this.what = null;
    }, stays);
  }
  protected override render(): TemplateResult {
    return html`<div class="toast-place" role="status">
      ${
        this.what === null
          ? nothing
          : html`<div class="toast" @pointerenter=${() => this.stay()} @pointerleave=${() => this.leave()}>
              ${this.what}.<button
                @click=${() => {
                  this.what = null;
                  this.store.undo();
                }}
              >
                Undo
              </button>
            </div>`
      }
    </div>`;
  }
}
customElements.define('toast-line', ToastLine);
declare global {
  interface HTMLElementTagNameMap {
    'toast-line': ToastLine;
  }
}
