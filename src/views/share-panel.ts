import { html, LitElement, nothing, type TemplateResult } from 'lit';

/** Where links point when this page itself cannot be reached by others. */
const published = 'closing-angle/published';

/** <share-panel>: the link to this state. On the reader's own machine it says so, and asks where the page is published. */
export class SharePanel extends LitElement {
  static override properties = {
    fragment: {},
    longest: { type: Number },
    address: { state: true },
    copied: { state: true },
  };
  /** The packed state, without #; null while it is being made. */
  declare fragment: string | null;
  declare longest: number;
  declare address: string;
  declare copied: string | null;

  constructor() {
    super();
    this.fragment = null;
    this.longest = 8000;
    this.copied = null;
    this.address = read() ?? '';
  }
  protected override createRenderRoot(): HTMLElement {
    return this;
  }
  /** True where nobody else can open this page's address. */
  private get isLocal(): boolean {
    return location.protocol === 'file:' || /^(localhost|127\.|\[::1\]|0\.0\.0\.0)/.test(location.hostname);
  }
  private get base(): string {
    return this.isLocal && isAddress(this.address)
      ? this.address.replace(/#.*$/, '')
      : location.href.replace(/#.*$/, '');
  }
  private setAddress(text: string): void {
    this.address = text.trim();
    this.copied = null;
    try {
      localStorage.setItem(published, this.address);
    } catch {
      // Without storage it is asked for again next time.
    }
  }
  private async copy(link: string): Promise<void> {
    const box = this.querySelector<HTMLInputElement>('.link-text');
    try {
      await navigator.clipboard.writeText(link);
      this.copied = 'Copied.';
    } catch {
      box?.focus();
      box?.select();
      this.copied = 'This page may not use the clipboard. The link is selected: copy it from here.';
    }
  }
  protected override render(): TemplateResult {
    const { fragment } = this;
    const link = fragment === null ? '' : `${this.base}#${fragment}`;
    const tooLong = link.length > this.longest;
    return html`<div class="sheetlet" role="group" aria-labelledby="share-title">
      <h2 id="share-title">Share this notebook</h2>
      ${this.isLocal ? this.local() : nothing}
      ${tooLong ? html`<p class="fault">This notebook is too long for a link (${link.length} characters). Send the file instead.</p>` : nothing}
      <input class="link-text" aria-label="Link" readonly .value=${link} />
      <ul>
        <li>
          <button class="copy" ?disabled=${fragment === null || tooLong} @click=${() => void this.copy(link)}>
            Copy link<small
              >${link.length} characters. It opens as a
              copy.${this.isLocal && !isAddress(this.address) ? ' Nobody else can open it.' : ''}</small
            >
          </button>
        </li>
        <li>
          <button @click=${() => this.dispatchEvent(new CustomEvent('save-file', { bubbles: true }))}>
            Save a file<small>The notebook as it stands, to keep or send.</small>
          </button>
        </li>
        <li>
          <button @click=${() => this.dispatchEvent(new CustomEvent('open-file', { bubbles: true }))}>
            Open a file
          </button>
        </li>
      </ul>
      <p role="status">${this.copied ?? ''}</p>
    </div>`;
  }
  private local(): TemplateResult {
    const wrong = this.address !== '' && !isAddress(this.address);
    return html`<p>This page runs on your own machine: nobody else can open its link. Where is the page published?</p>
      <input
        class="address"
        aria-label="Address where the page is published"
        type="url"
        placeholder="https://"
        .value=${this.address}
        @change=${(e: Event) => this.setAddress((e.target as HTMLInputElement).value)}
      />
      ${wrong ? html`<p class="fault">Write a whole address that begins with https:// or http://.</p>` : nothing}`;
  }
}

const isAddress = (text: string): boolean => /^https?:\/\/[^\s/]+/.test(text) && URL.canParse(text);
function read(): string | null {
  try {
    return localStorage.getItem(published);
  } catch {
    return null;
  }
}
customElements.define('share-panel', SharePanel);
declare global {
  interface HTMLElementTagNameMap {
    'share-panel': SharePanel;
  }
}
