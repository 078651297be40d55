import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { Part, Read } from '../notebook/guide-says.ts';
import { stateIn } from '../notebook/guide-values.ts';
import type { Store } from '../notebook/store.ts';
import { workBelow, workLine } from './work-line.ts';

/** A guide's words, the values of the page among them in bold. */
export const said = (parts: readonly Part[]): readonly (TemplateResult | string)[] =>
  parts.map((part) => (part.live ? html`<b class="guide-value">${part.text}</b>` : part.text));

/** How far a question is, and a way to stop it. */
export function progress(done: number, stop: () => void): TemplateResult {
  const percent = Math.round(done * 100);
  return html`<div class="guide-work">
    <div class="bar" style="--done:${percent}%"></div>
    <small>Being worked out: ${percent} %. <button class="link" @click=${stop}>stop</button></small>
  </div>`;
}

/** The first work that a step waits for: that of the variant which is looked at before the others'. */
export function waitedFor(store: Store, reads: readonly Read[]): TemplateResult | typeof nothing {
  const { chosen, variants } = store.document;
  const isHere = ({ of }: Read): boolean => of === undefined || of === chosen;
  for (const read of reads.toSorted((a, b) => Number(isHere(b)) - Number(isHere(a)))) {
    if (stateIn(store, read.cell, read.of) === null) continue;
    const at = { state: (cell: Cell) => stateIn(store, cell, read.of)! };
    const work = workBelow(at, read.cell);
    const state = work && at.state(work);
    if (!state || !('done' in state)) continue;
    if (isHere(read)) return html`<div class="guide-work">${workLine(store, work, state)}</div>`;
    const percent = Math.round(state.done * 100);
    return html`<div class="guide-work">
      <div class="bar" style="--done:${percent}%"></div>
      <small>${variants.find((v) => v.id === read.of)!.name}: ${percent} % done.</small>
    </div>`;
  }
  return nothing;
}
