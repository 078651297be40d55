import { html, type TemplateResult } from 'lit';
import { strokeOf } from '../plots/variants.ts';

/** A short piece of a variant's line, by its place among them. */
export const dashSample = (place: number): TemplateResult =>
  html`<svg
    class="dash"
    aria-hidden="true"
    viewBox="0 0 26 6"
    .innerHTML=${`<path d="M1 3H25" fill="none" stroke="var(--ink)" ${strokeOf(place, 2)}/>`}
  ></svg>`;
