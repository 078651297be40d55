import type { Cell } from '../graph/cell.ts';
import type { Live } from '../graph/live.ts';
import { baseValue } from './base.ts';
import { type Document, layered } from './document.ts';

/** Gives a live graph what a document says of one of its variants, or of itself; the graph is not run. */
export function giveValues(
  live: Live,
  cells: Iterable<Cell>,
  document: Document,
  variant: string | null = document.chosen,
): void {
  const { inputs, held } = layered(document, variant);
  for (const cell of cells) {
    if (cell.role === 'input') {
      const saved = inputs[cell.id] ?? baseValue(document.base, cell.id);
      const value = saved === undefined ? cell.initial : cell.kind.restore(saved);
      live.set(cell, value === undefined ? cell.initial : value);
    } else if (cell.id in held) {
      const value = cell.kind.restore(held[cell.id]);
      if (value !== undefined) live.hold(cell, value);
    } else live.release(cell);
  }
}
