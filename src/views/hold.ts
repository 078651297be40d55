import type { Cell } from '../graph/cell.ts';
import { Impossible, lastGood } from '../graph/state.ts';
import type { Store } from '../notebook/store.ts';
import { angle } from '../units/quantity.ts';
import { format } from '../units/format.ts';
import { fromUnit, tidy, toUnit } from '../units/unit.ts';
import { crank } from './crank.ts';
import type { Gesture } from './gesture.ts';
import { figureOf, lower, shownOf, spoken } from './words.ts';

/** What a figure's handle has hold of. Values in SI. */
export interface Hold {
  readonly label: string;
  readonly low: number;
  readonly high: number;
  /** What one arrow key is worth. */
  readonly step: number;
  readonly now: number | undefined;
  /** A value as a number for a slider, and in words. */
  readonly shown: (value: number) => { readonly figure: string; readonly words: string };
  readonly put: (value: number) => void;
}

/** A handle on a cell: it stops at the ends of the cell's slider, and where the cell cannot go. */
export function holdOf(store: Store, cell: Cell, gesture: Gesture): Hold {
  const { unit, step } = shownOf(store, cell);
  const [low, high] = cell.slider ?? [-Infinity, Infinity];
  const now = lastGood(store.state(cell));
  return {
    label: cell.label,
    low,
    high,
    step: fromUnit(step, unit) - fromUnit(0, unit),
    now: typeof now === 'number' ? now : undefined,
    shown: (value) => ({ figure: figureOf(store, cell, value), words: spoken(store, cell, value) }),
    put(value) {
      const even = fromUnit(Math.round(toUnit(value, unit) / step) * step, unit);
      const held = Math.min(high, Math.max(low, even));
      try {
        store.put(cell, tidy(held), {
          what: `Set ${lower(cell.label)} to ${figureOf(store, cell, held)}`,
          place: cell.id,
          gesture: gesture.now ?? gesture.key,
        });
      } catch (error) {
        if (!(error instanceof Impossible)) throw error; // it stays where it can be
      }
    },
  };
}

const degree = Math.PI / 180;

/** A handle on the page's crank. */
export const crankHold = (store: Store): Hold => ({
  label: 'Crank angle',
  low: 0,
  high: 720 * degree,
  step: degree,
  now: crank.angle ?? 0,
  shown: (value) => ({
    figure: String(Math.round(value / degree)),
    words: `${format(value, angle, store.system)} after firing top`,
  }),
  put: (value) => crank.turn(Math.round(value / degree) * degree),
});
