import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { type Document, longestName, type Variant } from '../notebook/document.ts';
import { addVariant, keepOnly, moveVariant, removeVariant, renameVariant } from '../notebook/variants.ts';
import { dashSample } from './dash-sample.ts';
import { Heed } from './heed.ts';
import { placed } from './overlay.ts';
import { Piece } from './piece.ts';
import { when } from './words.ts';

const arrows: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1 };

/** <variants-panel>: the alternatives that this notebook holds, which of them is looked at, and what can be done to it. */
export class VariantsPanel extends Piece {
  static override properties = {
    ...Piece.properties,
    renaming: { state: true },
    fault: { state: true },
  };
  declare renaming: boolean;
  /** Why something could not be done. */
  declare fault: string | null;
  /** The one that was looked at before what all share. */
  private last: string | null = null;
  private now: string | null = null;
  readonly heed = new Heed(this);

  constructor() {
    super();
    this.renaming = false;
    this.fault = null;
  }
  private get notebook(): Document {
    return this.store.document;
  }
  protected override willUpdate(): void {
    super.willUpdate();
    const { chosen } = this.notebook;
    if (chosen !== this.now) {
      this.renaming = false;
      this.fault = null;
    }
    this.now = chosen;
    if (chosen !== null) this.last = chosen;
  }
  private choose(id: string | null): void {
    this.store.choose(id);
  }
  private async focusOn(of: string): Promise<void> {
    await this.updateComplete;
    const place = this.querySelector<HTMLElement>(of);
    place?.focus();
    if (place instanceof HTMLInputElement) place.select();
  }
  private rename(): void {
    this.renaming = true;
    this.fault = null;
    void this.focusOn('.rename');
  }
  private call(id: string, name: string): boolean {
    this.fault = renameVariant(this.store, id, name);
    this.renaming = this.fault !== null;
    return !this.renaming;
  }
  private typed(event: KeyboardEvent, id: string): void {
    const { value } = event.target as HTMLInputElement;
    if (event.key === 'Escape') {
      this.renaming = false;
      this.fault = null;
    } else if (event.key !== 'Enter' || !this.call(id, value)) return;
    void this.focusOn('[aria-pressed="true"]');
  }
  private move(id: string, by: number, focus: string): void {
    moveVariant(this.store, id, by);
    void this.focusOn(focus);
  }

  protected override render(): TemplateResult {
    const { store } = this;
    const { variants, chosen } = this.notebook;
    const now = variants.find((v) => v.id === chosen);
    const add = (): void => void (this.fault = addVariant(store));
    const fault = when(this.fault, () => html`<p class="fault" id="variants-fault" role="alert">${this.fault}</p>`);
    if (variants.length === 0)
      return html`<p class="variants" id="variants">
        <button class="link" @click=${add}>Add a variant</button>, such as another cam beside this one. It holds only
        what differs.
      </p>`;
    return html`<div class="variants" id="variants">
      <ul class="chips" aria-label="Variants">
        ${repeat(
          placed(this.notebook),
          (v) => v.id,
          (v) => html`<li>${this.renaming && now?.id === v.id ? this.nameField(now) : this.chip(v, chosen)}</li>`,
        )}
        <li><button class="add" @click=${add}>Add a variant</button></li>
      </ul>
      ${fault} ${now ? this.doings(now, variants) : this.shared()}
    </div>`;
  }
  private chip({ id, name, place }: ReturnType<typeof placed>[number], chosen: string | null): TemplateResult {
    return html`<button
      aria-pressed=${id === chosen}
      title=${id === null ? nothing : 'Shift and an arrow key move it'}
      @click=${() => this.choose(id)}
      @keydown=${(e: KeyboardEvent) => {
        const by = e.shiftKey ? arrows[e.key] : undefined;
        if (!by || id === null) return;
        e.preventDefault();
        this.move(id, by, `[data-id="${CSS.escape(id)}"]`);
      }}
      data-id=${id ?? nothing}
    >
      ${dashSample(place)}${name}
    </button>`;
  }
  private nameField({ id, name }: Variant): TemplateResult {
    return html`<input
      class="rename"
      aria-label="Name of ${name}"
      maxlength=${longestName}
      autocomplete="off"
      .value=${name}
      aria-invalid=${this.fault ? 'true' : 'false'}
      aria-describedby=${this.fault ? 'variants-fault' : nothing}
      @keydown=${(e: KeyboardEvent) => this.typed(e, id)}
      @blur=${(e: FocusEvent) => this.renaming && this.call(id, (e.target as HTMLInputElement).value)}
    />`;
  }
  private doings({ id, name }: Variant, variants: readonly Variant[]): TemplateResult {
    const { store } = this;
    const at = variants.findIndex((v) => v.id === id);
    const tool = (label: string, act: () => void, isOff = false, title?: string): TemplateResult =>
      html`<button
        class="link"
        aria-label="${label} ${name}"
        title=${title ?? nothing}
        ?disabled=${isOff}
        @click=${act}
      >
        ${label}
      </button>`;
    const left = (): void => this.move(id, -1, at > 1 ? '.left button' : '[aria-pressed="true"]');
    const right = (): void => this.move(id, 1, at < variants.length - 2 ? '.right button' : '[aria-pressed="true"]');
    // The next press is not to hit another variant.
    const away = (act: typeof removeVariant) => (): void => {
      act(store, id);
      void this.focusOn('[aria-pressed="true"], .variants > .link');
    };
    return html`<p class="quiet">
        What you change belongs to <b>${name}</b> alone.
        <button class="link" @click=${() => this.choose(null)}>Change what all share</button>
      </p>
      <ul class="doings" aria-label="What can be done to ${name}">
        <li>${tool('Rename', () => this.rename())}</li>
        <li class="left">${tool('Move left', left, at === 0)}</li>
        <li class="right">${tool('Move right', right, at === variants.length - 1)}</li>
        <li>${tool('Remove', away(removeVariant))}</li>
        <li>${tool('Keep only', away(keepOnly), false, 'The notebook takes over what it says; the others go')}</li>
      </ul>`;
  }
  private shared(): TemplateResult {
    const back = this.notebook.variants.find((v) => v.id === this.last) ?? this.notebook.variants[0]!;
    return html`<p class="quiet">
      What you change belongs to every variant that says nothing else of it.
      <button class="link" @click=${() => this.choose(back.id)}>Back to ${back.name}</button>
    </p>`;
  }
}
customElements.define('variants-panel', VariantsPanel);
declare global {
  interface HTMLElementTagNameMap {
    'variants-panel': VariantsPanel;
  }
}
