import { html, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { State } from '../graph/state.ts';
import { cautionsBeside } from '../notebook/cautions.ts';
import type { Store } from '../notebook/store.ts';
import { say } from '../units/phrase.ts';
import type { Column } from './comparison-data.ts';

/** The cautions that each variant has and the one it is held against has not, in sentences that lead to what they are about. */
export function brought(
  store: Store,
  cautions: readonly Cell[],
  columns: readonly Column[],
  beside: number,
): TemplateResult {
  const reference = columns[beside]!;
  const others = columns.filter((c) => c !== reference);
  const isKnown = ({ state }: Column): boolean => cautions.every((c) => isSettled(state(c)));
  const found = others.map((column) => ({
    ...column,
    said:
      isKnown(reference) && isKnown(column)
        ? cautionsBeside(
            cautions,
            (c) => column.state(c)!,
            (c) => reference.state(c)!,
          )
        : null,
  }));
  return html`<h3>Cautions that ${reference.name} has not</h3>
    ${found.map(({ id, name, said }) =>
      said === null || said.length === 0
        ? html`<p><b>${name}</b> ${said ? 'brings none.' : '…'}</p>`
        : html`<p><b>${name}</b> brings ${said.length === 1 ? 'one' : said.length}:</p>
            <ul class="brings">
              ${said.map(({ about, words, tone }) => html`<li class="is-${tone}"><a href="#${about.id}" @click=${() => store.choose(id)}>${about.label}</a>: ${say(words, store.system)}</li>`)}
            </ul>`,
    )}`;
}

const isSettled = (state: State | undefined): boolean => state?.is === 'ready' || state?.is === 'fault';
