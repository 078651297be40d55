import { html, type TemplateResult } from 'lit';
import type { Cell, Slow } from '../graph/cell.ts';
import type { State } from '../graph/state.ts';
import type { Store } from '../notebook/store.ts';

/** How far slow work is, and a way to stop it or let it go on. */
export function workLine(store: Store, cell: Slow, state: State): TemplateResult | null {
  if (state.is !== 'waiting' && state.is !== 'coming') return null;
  if (state.is === 'waiting' && state.stopped)
    return html`<small>Stopped. <button class="link" @click=${() => store.resume(cell)}>go on</button></small>`;
  const percent = Math.round(state.done * 100);
  return html`<div class="bar" style="--done:${percent}%"></div>
    <small>${percent} % done. <button class="link" @click=${() => store.stop(cell)}>stop</button></small>`;
}

/** Where cells stand: those of a store, or of another of its variants. */
export interface Standing {
  state(cell: Cell): State;
}

/** The slow work that a cell waits for, itself or what it reads; null where it waits for none. */
export function workBelow(at: Standing, cell: Cell): Slow | null {
  const { is } = at.state(cell);
  if (cell.role === 'input' || (is !== 'waiting' && is !== 'coming')) return null;
  if (cell.role === 'slow') {
    const before = Object.values(cell.from).map((c) => workBelow(at, c));
    return before.find((c) => c !== null) ?? cell;
  }
  for (const source of Object.values(cell.from)) {
    const work = workBelow(at, source);
    if (work) return work;
  }
  return null;
}
