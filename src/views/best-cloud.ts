import { html, LitElement, type TemplateResult } from 'lit';
import { type DesignCloud, designCloud } from '../plots/design-cloud.ts';
import { rewrite } from './rewrite.ts';
import { Sight } from './sight.ts';

const turns: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** <best-cloud>: designs as dots; one of those told of is chosen, with the arrow keys or where the pointer comes down. */
export class BestCloud extends LitElement {
  static override properties = { cloud: { attribute: false }, names: { attribute: false } };
  declare cloud: DesignCloud;
  /** What each design that is told of comes to, in words. */
  declare names: readonly string[];
  private readonly sight = new Sight(
    this,
    () => this.querySelector('.frame'),
    () => this.requestUpdate(),
  );
  private drawn: ReturnType<typeof designCloud> | null = null;

  protected override createRenderRoot(): HTMLElement {
    return this;
  }
  private choose(i: number): void {
    if (i >= 0 && i < this.cloud.shown.length) this.dispatchEvent(new CustomEvent('choose', { detail: i }));
  }
  private async press(event: KeyboardEvent): Promise<void> {
    const { key } = event;
    const last = this.cloud.shown.length - 1;
    const by = turns[key];
    const next = by ? this.cloud.chosen + by : key === 'Home' ? 0 : key === 'End' ? last : null;
    if (next === null) return;
    event.preventDefault();
    this.choose(Math.min(last, Math.max(0, next)));
    await new Promise(requestAnimationFrame); // who hears of it draws this anew
    this.querySelector<HTMLElement>('[aria-checked="true"]')?.focus({ preventScroll: true });
  }
  /** The nearest dot is meant: on a front they stand closer than a thumb is wide. */
  private point(event: PointerEvent): void {
    const box = this.querySelector('.frame')!.getBoundingClientRect();
    const [x, y] = [event.clientX - box.left, event.clientY - box.top];
    const far = (this.drawn?.places ?? []).map(([px, py]) => Math.hypot(px - x, py - y));
    const least = Math.min(...far);
    if (least < 32) this.choose(far.indexOf(least));
  }

  protected override render(): TemplateResult {
    const { room } = this.sight;
    this.drawn = room === null ? this.drawn : designCloud(this.cloud, room);
    const places = this.drawn?.places ?? [];
    return html`<div class="frame low" @click=${(e: PointerEvent) => this.point(e)}>
      <svg role="img" aria-label=${this.cloud.label}></svg>
      <div role="radiogroup" aria-label="Designs">
        ${this.names.map(
          (name, i) =>
            html`<span
              class="dot"
              role="radio"
              aria-checked=${i === this.cloud.chosen}
              aria-label=${name}
              tabindex=${i === this.cloud.chosen ? 0 : -1}
              style="left:${places[i]?.[0] ?? 0}px;top:${places[i]?.[1] ?? 0}px"
              @keydown=${(e: KeyboardEvent) => void this.press(e)}
            ></span>`,
        )}
      </div>
    </div>`;
  }
  protected override updated(): void {
    const svg = this.querySelector('svg');
    const { drawn } = this;
    if (!svg || !drawn) return;
    svg.setAttribute('viewBox', `0 0 ${drawn.width} ${drawn.height}`);
    svg.setAttribute('width', String(drawn.width));
    svg.setAttribute('height', String(drawn.height));
    rewrite(svg, drawn.body);
  }
}
customElements.define('best-cloud', BestCloud);
declare global {
  interface HTMLElementTagNameMap {
    'best-cloud': BestCloud;
  }
}
