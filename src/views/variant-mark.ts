import { html, nothing, type TemplateResult } from 'lit';
import { dashSample } from './dash-sample.ts';
import { Heed } from './heed.ts';
import { placed } from './overlay.ts';
import { Piece } from './piece.ts';

/** <variant-mark>: whose values these are, and where to choose another's; nothing where there are no variants. */
export class VariantMark extends Piece {
  readonly heed = new Heed(this);

  protected override render(): TemplateResult | typeof nothing {
    const { document } = this.store;
    const self = placed(document).find((v) => v.id === document.chosen);
    if (!self) return nothing;
    return html`<a class="whose" href="#variants"
      ><span class="vh">What you change belongs to </span>${dashSample(self.place)}${self.name}</a
    >`;
  }
}
customElements.define('variant-mark', VariantMark);
declare global {
  interface HTMLElementTagNameMap {
    'variant-mark': VariantMark;
  }
}
