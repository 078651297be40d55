import { html, nothing, type TemplateResult } from 'lit';
import type { Cell } from '../graph/cell.ts';
import type { Optional, Scalar, Sense } from '../graph/kind.ts';
import type { Store } from '../notebook/store.ts';
import { differenceFigure, figure } from '../units/format.ts';
import type { Quantity, Shown } from '../units/quantity.ts';

/** The quantity of a cell's figure, if it has one. */
export function quantityOf(cell: Cell): Quantity | undefined {
  const kind = cell.kind as {
    readonly quantity?: Scalar['quantity'];
    readonly of?: Optional['of'];
  };
  return kind.quantity ?? kind.of?.quantity;
}
export const senseOf = (cell: Cell): Sense | undefined => (cell.kind as Partial<Scalar>).sense;

/** How a cell's figure is shown now. */
export const shownOf = (store: Store, cell: Cell): Shown => quantityOf(cell)![store.systemOf(cell)];

/** The figure alone, in the unit shown now. */
export function figureOf(store: Store, cell: Cell, value: number): string {
  const quantity = quantityOf(cell)!;
  return figure(value, quantity[store.systemOf(cell)], quantity.trim);
}
export function differenceOf(store: Store, cell: Cell, value: number): string {
  const quantity = quantityOf(cell)!;
  const shown = quantity[store.systemOf(cell)];
  const coarse = differenceFigure(value, shown, quantity.trim);
  // A change smaller than the last digit still deserves one figure.
  return value !== 0 && /^[0.]+$/.test(coarse)
    ? differenceFigure(value, { ...shown, digits: shown.digits + 2 }, true)
    : coarse;
}

/** The unit after a figure; an angle's sense is an abbreviation that says itself in full. */
export function unitOf(store: Store, cell: Cell): TemplateResult | string {
  const { symbol } = shownOf(store, cell).unit;
  const sense = senseOf(cell);
  return sense ? html`<abbr title="degrees ${sense.words}">° ${sense.short}</abbr>` : symbol;
}
const joined = (figure: string, symbol: string): string =>
  symbol === '°' || symbol === '' ? `${figure}${symbol}` : `${figure} ${symbol}`;
/** A figure with its unit, as text. */
export const withUnit = (store: Store, cell: Cell, si: number): string =>
  joined(figureOf(store, cell, si), shownOf(store, cell).unit.symbol);
/** A difference with its unit, as text. */
export const differenceWithUnit = (store: Store, cell: Cell, si: number): string =>
  joined(differenceOf(store, cell, si), shownOf(store, cell).unit.symbol);

/** The unit as spoken. */
function spokenUnit(store: Store, cell: Cell): string {
  const { symbol } = shownOf(store, cell).unit;
  const sense = senseOf(cell);
  return symbol === '°' ? `degrees${sense ? ` ${sense.words}` : ''}` : symbol;
}
/** A figure as spoken, with its unit. */
export const spoken = (store: Store, cell: Cell, value: number): string =>
  `${figureOf(store, cell, value)} ${spokenUnit(store, cell)}`.trim();

/** A count, in groups of three digits. */
export const grouped = (count: number): string => count.toLocaleString('en-US');
export const lower = (label: string): string =>
  /^[A-Z][a-z]/.test(label) ? label[0]!.toLowerCase() + label.slice(1) : label;
export const shortOf = (cell: Cell): string => cell.short ?? cell.label;
export const when = (
  condition: unknown,
  content: () => TemplateResult | typeof nothing,
): TemplateResult | typeof nothing => (condition ? content() : nothing);
