import { html, nothing, type TemplateResult } from 'lit';
import { type Cautions, cautionsChanged, type Change } from '../notebook/cautions.ts';
import type { Store } from '../notebook/store.ts';
import { say } from '../units/phrase.ts';
import { tidy } from '../units/unit.ts';
import { lower, shortOf, withUnit } from './words.ts';

/** One answer: the values, what they do to the cautions, and a button that sets them all in one step. */
export function offerOf(store: Store, changes: readonly Change[]): TemplateResult {
  const figures = changes.map(({ cell, value }) => withUnit(store, cell, value));
  const isOne = changes.length === 1;
  const names = changes.map(({ cell }) => lower(isOne ? cell.label : shortOf(cell)));
  const words = isOne ? figures[0]! : names.map((name, k) => `${name} ${figures[k]!}`).join(' and ');
  const named = names.map((name, k) => `${name} to ${figures[k]!}`).join(' and ');
  const set = (): void =>
    store.putAll(
      changes.map(({ cell, value }) => ({ cell, value: tidy(value) })),
      { what: `Set ${named}`, place: changes[0]!.cell.id, announce: true },
    );
  return html`<span class="offer"
    >${words}. ${cautionsOf(store, cautionsChanged(store.snapshot(), store.catalogue, changes))}
    <button class="button" @click=${set}>Set ${isOne ? figures[0]! : 'both'}</button></span
  >`;
}

function cautionsOf(store: Store, { on, off, later }: Cautions): TemplateResult {
  return html`${on.length === 0 ? 'It turns on no caution.' : `It turns on: ${on.map((c) => say(c, store.system)).join(' ')}`}
  ${off.length === 0 ? nothing : `It takes away: ${off.map(lower).join('; ')}.`}
  ${later.length === 0 ? nothing : html`<small>Known once it is set: ${later.map(lower).join('; ')}.</small>`}`;
}
