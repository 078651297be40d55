import type { Cell, Range } from '../graph/cell.ts';
import { numeric } from '../graph/numeric.ts';
import type { Catalogue } from './catalogue.ts';

/** A range in which a cell can be trusted: its own value, or that of something it reads, has to stay in it. */
export interface Trust {
  readonly cell: Cell;
  readonly watched: Cell;
  readonly range: Range;
}

/** Every range of trust that the page marks when it is left. */
export const trustsOf = ({ cells }: Catalogue): readonly Trust[] =>
  [...cells.values()].flatMap((cell): readonly Trust[] => {
    const own = cell.role === 'input' ? cell.trust : cell.validValue;
    const read = cell.role === 'input' ? [] : Object.entries(cell.valid);
    return [
      ...(own ? [{ cell, watched: cell, range: own }] : []),
      ...read.map(([name, range]) => ({
        cell,
        watched: (cell as Exclude<Cell, { role: 'input' }>).from[name]!,
        range,
      })),
    ];
  });

/** True if a value is outside a range; what has no value is not. */
export function isLeft([low, high]: Range, value: unknown): boolean {
  const figure = numeric(value);
  return figure < low || figure > high;
}
