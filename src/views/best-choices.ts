import { html, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import { toneRank } from '../graph/designs.ts';
import type { VerdictKind } from '../graph/kind.ts';

type Option = readonly [id: string, label: string];

/**
 * The words that a verdict can be held to, the best first: all but the worst; those of one tone are one, under the id
 * that stands there already if it is one of theirs.
 */
export function wordsOf(cell: Cell, now?: string): readonly Option[] {
  const { words } = cell.kind as unknown as VerdictKind;
  const rankOf = (word: VerdictKind['words'][number]): number => toneRank[word.tone];
  const ranks = [...new Set(words.map(rankOf))].toSorted((a, b) => a - b);
  const held = words.find((w) => w.id === now);
  const offered = held ? Math.max(ranks.length - 1, ranks.indexOf(rankOf(held)) + 1) : ranks.length - 1;
  return ranks.slice(0, offered).map((rank) => {
    const same = words.filter((w) => rankOf(w) === rank);
    return [(held && rankOf(held) === rank ? held : same[0]!).id, same.map((w) => w.label).join(' or ')];
  });
}

/** A word that opens a list of words. */
export const optionList = (
  name: string,
  options: readonly Option[],
  now: string,
  set: (id: string) => void,
): TemplateResult =>
  html`<select class="blank" aria-label=${name} @change=${(e: Event) => set((e.target as HTMLSelectElement).value)}>
    ${options.map(([id, label]) => html`<option value=${id} ?selected=${id === now}>${label}</option>`)}
  </select>`;

/** What parts the k-th of several from the next; nothing after the last. */
export const joint = (k: number, count: number): string => (k === count - 1 ? '' : k === count - 2 ? ' and' : ',');
/** A word that takes the sign after it along: no line begins with a comma. */
export const glued = (word: TemplateResult, after: string): TemplateResult =>
  after.startsWith(' ') ? html`${word}${after}` : html`<span class="glued">${word}${after}</span>`;
