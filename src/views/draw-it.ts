import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import { answersOf } from '../graph/chapter.ts';
import { usualDraws } from '../notebook/document.ts';
import type { Store } from '../notebook/store.ts';
import type { AddItem } from './add-items.ts';
import { afterFrame } from './frame.ts';
import { grouped } from './words.ts';

/** "Draw it 10,000 times", in an answer's panel: adds draws of it to its chapter, or leads to those that are there. */
export function drawIt(store: Store, cell: Cell): TemplateResult | typeof nothing {
  const { chapters } = store.catalogue;
  const chapter = chapters.find((c) => answersOf(c).includes(cell));
  if (!chapter || (cell.kind.name !== 'scalar' && cell.kind.name !== 'verdict')) return nothing;
  const find = (): string | undefined => store.document.page.find((p) => p.type === 'draws' && p.read === cell.id)?.id;
  const act = async (event: Event): Promise<void> => {
    if (find() === undefined) {
      const detail: AddItem = {
        chapter: chapter.id,
        add: { type: 'draws', name: 'draws', fresh: (id) => ({ id, type: 'draws', read: cell.id }) },
      };
      event.target!.dispatchEvent(new CustomEvent('add-item', { detail, bubbles: true }));
    }
    await import('./draws-figure.ts');
    afterFrame(() => {
      const place = document.getElementById(find() ?? '');
      place?.scrollIntoView({ block: 'center' });
      place?.querySelector('select')?.focus({ preventScroll: true });
    });
  };
  const much = store.live.isQuick(cell) ? `${grouped(usualDraws.count)} times` : `for ${usualDraws.seconds} seconds`;
  return html`<p class="make">
    <button class="button" @click=${(e: Event) => void act(e)}>Draw it ${much}</button>
    <small>to see how often it comes to what, within every ±.</small>
  </p>`;
}
