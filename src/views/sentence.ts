import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import { answersOf, fieldsOf } from '../graph/chapter.ts';
import type { Choice } from '../graph/kind.ts';
import { lastGood } from '../graph/state.ts';
import type { Saved } from '../notebook/document.ts';
import type { Store } from '../notebook/store.ts';
import { fromUnit, tidy, toUnit } from '../units/unit.ts';
import { figureOf, lower, shownOf } from './words.ts';

// The blue words of the sentences over figures: lists and blanks that are changed in place.

interface List {
  /** Its accessible name. */
  readonly name: string;
  readonly cells: readonly Cell[];
  /** The id of the cell that is chosen. */
  readonly now: string;
  readonly set: (id: string) => void;
  /** What it says where no cell is chosen, if that may be. */
  readonly none?: string;
}

/** A word that opens a list of cells, by chapter. */
export function cellList(store: Store, { name, cells, now, set, none }: List): TemplateResult {
  const { chapters } = store.catalogue;
  const rooms = chapters.map((chapter) => ({
    chapter,
    cells: cells.filter((c) => answersOf(chapter).includes(c) || fieldsOf(chapter).includes(c)),
  }));
  const placed = new Set(rooms.flatMap((r) => r.cells));
  const rest = cells.filter((c) => !placed.has(c));
  return html`<select
    class="blank"
    aria-label=${name}
    @change=${(e: Event) => set((e.target as HTMLSelectElement).value)}
  >
    ${none === undefined ? nothing : html`<option value="" ?selected=${now === ''}>${none}</option>`}
    ${[...rooms.map((r) => [r.chapter.title, r.cells] as const), ['Other', rest] as const]
      .filter(([, own]) => own.length > 0)
      .map(
        ([title, own]) =>
          html`<optgroup label=${title}>
            ${own.map((c) => html`<option value=${c.id} ?selected=${c.id === now}>${lower(c.label)}</option>`)}
          </optgroup>`,
      )}
  </select>`;
}

/** A word to type over. `written` is given what was typed. */
export const blank = (name: string, value: string, written: (text: string) => void, wide = false): TemplateResult =>
  html`<input
    class="blank ${wide ? 'wide' : ''}"
    inputmode=${wide ? 'text' : 'decimal'}
    aria-label=${name}
    .value=${value}
    @change=${(e: Event) => written((e.target as HTMLInputElement).value)}
  />`;

/** The unit after a blank, as words have it. */
export function unitWord(store: Store, cell: Cell): string {
  const { symbol } = shownOf(store, cell).unit;
  return symbol === '°' ? 'degrees' : symbol;
}

/** What a figure keeps fixed, as the end of its sentence. */
export function whileFixed(store: Store, fixed: Saved = {}): string {
  const { cells } = store.catalogue;
  return Object.entries(fixed)
    .map(([id, saved]) => {
      const cell = cells.get(id)!;
      const option = (cell.kind as Partial<Choice>).options?.find((o) => o.id === saved);
      return `, while ${lower(cell.label)} ${option ? lower(option.label) : figureOf(store, cell, saved as number)}`;
    })
    .join('');
}

/** A range to begin with: what the slider covers, or round what it is now, on the shown grid. */
export function rangeOf(store: Store, cell: Cell): { readonly from: number; readonly to: number } {
  if (cell.slider) return { from: cell.slider[0], to: cell.slider[1] };
  const now = lastGood(store.state(cell));
  const about = typeof now === 'number' ? now : 0;
  const { unit, step } = shownOf(store, cell);
  const even = (si: number): number => tidy(fromUnit(Math.round(toUnit(si, unit) / step) * step, unit));
  const [from, to] = [even(about * 0.8), even(about * 1.2)];
  return from < to
    ? { from, to }
    : {
        from: even(about) - fromUnit(step, unit) + fromUnit(0, unit),
        to: even(about) + fromUnit(step, unit) - fromUnit(0, unit),
      };
}
