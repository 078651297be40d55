import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { CycleView } from '../graph/chapter.ts';
import { lastGood } from '../graph/state.ts';
import { crank } from './crank.ts';
import { onFrame } from './frame.ts';
import { Piece } from './piece.ts';
import './drawn-figure.ts';

const degree = Math.PI / 180;
const pace = 60 * degree; // a second, so that a cycle takes twelve
/** Shorter than this, one of two places is as good as the other. */
const hair = 0.01 * degree;

interface Stop {
  readonly name: string;
  readonly angle: number;
}

/**
 * <crank-view>: one cylinder through both turns of a cycle. The crank is turned by the crankpin, by a slider, from
 * event to event, or by itself; by itself it halts where the intake valve shuts. It moves nothing in the notebook.
 */
export class CrankView extends Piece {
  static override properties = {
    ...Piece.properties,
    view: { attribute: false },
    number: { type: Number },
    playing: { state: true },
  };
  declare view: CycleView;
  declare number: number;
  declare playing: boolean;
  private frame = 0;
  /** The next picture is said aloud: a button brought the crank here. A slider that is turned speaks for itself. */
  private hail = false;
  private unwatchCrank: (() => void) | undefined;
  private readonly calm = matchMedia('(prefers-reduced-motion: reduce)');

  constructor() {
    super();
    this.number = 1;
    this.playing = false;
  }
  override connectedCallback(): void {
    super.connectedCallback();
    this.unwatchCrank = crank.watch(() => onFrame(this.place));
    this.calm.addEventListener('change', this.still);
  }
  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.unwatchCrank?.();
    this.calm.removeEventListener('change', this.still);
    cancelAnimationFrame(this.frame);
    crank.turn(undefined);
  }
  protected override watched(): readonly Cell[] {
    return Object.values(this.view.events);
  }
  protected override firstUpdated(): void {
    crank.turn(crank.angle ?? this.closing);
  }

  private event(name: keyof CycleView['events']): number {
    return lastGood(this.store.state(this.view.events[name])) ?? 0;
  }
  private get closing(): number {
    return 3 * Math.PI + this.event('intakeClosing');
  }
  /** In the order a cycle meets them, from firing top dead center. */
  private get stops(): readonly Stop[] {
    return [
      { name: 'firing top', angle: 0 },
      { name: 'exhaust opens', angle: Math.PI - this.event('exhaustOpening') },
      { name: 'intake opens', angle: 2 * Math.PI - this.event('intakeOpening') },
      { name: 'top of the exhaust stroke', angle: 2 * Math.PI },
      { name: 'exhaust shuts', angle: 2 * Math.PI + this.event('exhaustClosing') },
      { name: 'bottom of the intake stroke', angle: 3 * Math.PI },
      { name: 'intake shuts', angle: this.closing },
    ].toSorted((a, b) => a.angle - b.angle);
  }
  private get next(): Stop {
    const { stops } = this;
    return stops.find((s) => s.angle > (crank.angle ?? 0) + hair) ?? stops[0]!;
  }

  private readonly still = (): void => {
    cancelAnimationFrame(this.frame);
    this.playing = false;
    this.requestUpdate();
  };
  private go(stop: Stop): void {
    this.still();
    this.hail = true;
    crank.turn(stop.angle);
  }
  private play(): void {
    if (this.playing) return this.still();
    this.playing = true;
    let before = performance.now();
    const step = (now: number): void => {
      const at = crank.angle ?? 0;
      // A frame that came late turns the crank no further than three would.
      const to = at + pace * Math.min((now - before) / 1000, 0.05);
      before = now;
      const { closing } = this;
      if (at < closing - hair && to >= closing) {
        this.go({ name: 'intake shuts', angle: closing });
        return;
      }
      crank.turn(to);
      this.frame = requestAnimationFrame(step);
    };
    this.frame = requestAnimationFrame(step);
  }

  /** The crank turns many times a second: only what stands beside it is set. */
  private readonly place = (): void => {
    const slider = this.querySelector<HTMLInputElement>('.turn');
    if (slider && crank.angle !== undefined) slider.value = String(Math.round(crank.angle / degree));
    const next = this.querySelector('.next');
    if (next) next.textContent = `On to: ${this.next.name}`;
  };
  private tell(words: string): void {
    const says = this.querySelector('.crank-says');
    if (says) says.textContent = words;
    this.querySelector('.turn')?.setAttribute('aria-valuetext', words);
    const aloud = this.querySelector('[role=status]');
    if (this.hail && aloud) aloud.textContent = words;
    this.hail = false;
  }

  protected override render(): TemplateResult {
    const { store, view } = this;
    return html`<div class="crank">
      <drawn-figure
        .store=${store}
        .figure=${view.section}
        .number=${this.number}
        @drawn=${(e: CustomEvent<string>) => this.tell(e.detail)}
      ></drawn-figure>
      <p class="crank-says"></p>
      <p class="vh" role="status"></p>
      <input
        class="slide turn"
        type="range"
        min="0"
        max="719"
        step="1"
        aria-label="Crank angle after firing top"
        style="--lo:0;--hi:1;--was:-1"
        @input=${(e: Event) => {
          this.still();
          crank.turn(Number((e.target as HTMLInputElement).value) * degree);
        }}
      />
      <p class="crank-tools">
        ${
          this.calm.matches
            ? nothing
            : html`<button class="button" @click=${() => this.play()}>${this.playing ? 'Stop' : 'Turn it'}</button>`
        }
        <button class="button next" @click=${() => this.go(this.next)}></button>
        <button class="button" @click=${() => this.go({ name: 'intake shuts', angle: this.closing })}>
          To the closing
        </button>
      </p>
      <drawn-figure .store=${store} .figure=${view.lifts} .number=${0}></drawn-figure>
    </div>`;
  }
  protected override updated(): void {
    this.place();
  }
}
customElements.define('crank-view', CrankView);
declare global {
  interface HTMLElementTagNameMap {
    'crank-view': CrankView;
  }
}
