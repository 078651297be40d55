import { html, type TemplateResult } from 'lit';
import { read } from '../formula/read.ts';
import type { Cell } from '../graph/cell.ts';
import { NotSettled } from '../graph/snapshot.ts';
import { type Bond, type Pair, type PairSearch, type PairSolution, solvePair } from '../graph/solve-pair.ts';
import { Impossible, lastGood } from '../graph/state.ts';
import { say } from '../units/phrase.ts';
import { cellList } from './sentence.ts';
import { choicesForBoth, reachOf, usualSecond } from './make-choices.ts';
import { offerOf } from './make-offer.ts';
import { Piece } from './piece.ts';
import { figureOf, lower, quantityOf, shownOf, withUnit } from './words.ts';

/** The first half of the sentence; a target of null keeps the result as it is. */
interface First {
  readonly read: Cell;
  readonly target: number | null;
  readonly vary: Cell;
}

/** <make-other>: "and make … … by changing …": a second result that is wanted at once with the first, and the answer for both. */
export class MakeOther extends Piece {
  static override properties = {
    ...Piece.properties,
    first: { attribute: false },
    others: { attribute: false },
    cell: { attribute: false },
    target: { state: true },
    by: { state: true },
    fault: { state: true },
  };
  declare first: First;
  declare others: readonly Cell[];
  /** The second result. */
  declare cell: Cell;
  declare target: number | null;
  declare by: string;
  declare fault: string | null;

  constructor() {
    super();
    this.target = null;
    this.by = '';
    this.fault = null;
  }
  protected override watched(): readonly Cell[] {
    return [this.cell, this.first.read];
  }
  private aim(text: string): void {
    const { cell, store } = this;
    const got = read(text, quantityOf(cell)!, shownOf(store, cell));
    this.fault = 'fault' in got ? got.fault : null;
    this.target = 'fault' in got ? null : got.si;
  }
  private pickOther(id: string): void {
    this.target = null;
    this.fault = null;
    this.dispatchEvent(new CustomEvent('another', { detail: id }));
  }

  protected override render(): TemplateResult {
    const { cell, first, others, store } = this;
    const now = lastGood(store.state(cell)) as number;
    const choices = choicesForBoth(store, [first.read, cell]).filter((c) => c !== first.vary);
    const vary = choices.find((c) => c.id === this.by) ?? usualSecond(choices, cell);
    return html`and make
      ${cellList(store, { name: 'Another result', cells: others, now: cell.id, set: (id) => this.pickOther(id) })}
      <input
        class="blank"
        inputmode="decimal"
        aria-label="Make ${lower(cell.label)} as well"
        .value=${figureOf(store, cell, this.target ?? now)}
        @change=${(e: Event) => this.aim((e.target as HTMLInputElement).value)}
      />
      by changing
      <select
        class="blank"
        aria-label="By changing as well"
        @change=${(e: Event) => (this.by = (e.target as HTMLSelectElement).value)}
      >
        ${choices.map((c) => html`<option value=${c.id} ?selected=${c === vary}>${lower(c.label)}</option>`)}</select
      >${this.fault ? html`. <span class="fault" role="alert">${this.fault}</span>` : vary && (this.target ?? first.target) !== null ? this.answer(vary) : '.'}`;
  }
  private answer(vary: Cell): TemplateResult | string {
    const { cell, first, store } = this;
    const reach = [reachOf(first.vary), reachOf(vary)] as const;
    if (!reach[0] || !reach[1]) return '. Nothing says how far those may go.';
    const wanted = (c: Cell, target: number | null): number => target ?? (lastGood(store.state(c)) as number);
    const search: PairSearch = {
      read: [first.read, cell],
      targets: [wanted(first.read, first.target), wanted(cell, this.target)],
      vary: [first.vary, vary],
      ranges: [reach[0], reach[1]],
    };
    try {
      return this.found(search, solvePair(store.snapshot(), search));
    } catch (error) {
      if (error instanceof NotSettled) return '. It waits for something that has no value.';
      if (error instanceof Impossible) return `. ${say(error.phrase, store.system)}`;
      throw error;
    }
  }
  private found({ read, vary }: PairSearch, { values, nearest, bond }: PairSolution): TemplateResult | string {
    const { store } = this;
    const why = bond ? bondWords(bond, read, vary) : '';
    if (values)
      return html`:
      ${offerOf(
        store,
        [0, 1].map((k) => ({ cell: vary[k]!, value: values[k]! })),
      )}
      ${why}`;
    const both = (cells: Pair<Cell>, [a, b]: Pair): string =>
      `${lower(cells[0].label)} ${withUnit(store, cells[0], a)} and ${lower(cells[1].label)} ${withUnit(store, cells[1], b)}`;
    return nearest
      ? `: out of reach. The nearest is ${both(read, nearest.gives)}, at ${both(vary, nearest.at)}. ${why}`
      : `. There is no answer in reach. ${why}`;
  }
}

/** Why two values do not set two results apart, as a machinist would say it. */
function bondWords(bond: Bond, read: Pair<Cell>, vary: Pair<Cell>): string {
  if (bond.is === 'idle') return `${vary[bond.which].label} moves neither of the two.`;
  if (bond.is === 'fixed') return `Neither change moves ${lower(read[bond.which].label)}.`;
  return 'Both changes move the same thing: they cannot set the two results apart.';
}
customElements.define('make-other', MakeOther);
declare global {
  interface HTMLElementTagNameMap {
    'make-other': MakeOther;
  }
}
