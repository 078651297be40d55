import type { Cell, Range } from '../graph/cell.ts';
import { lastGood } from '../graph/state.ts';
import type { Store } from '../notebook/store.ts';
import { judgesOf, results, variables } from '../notebook/sweeps.ts';

/** What can be changed to bring a result to a target: inputs and held values it stands on, and what a hand can move. */
export const choicesFor = (store: Store, cell: Cell): readonly Cell[] =>
  variables(store, cell).filter(
    (c) =>
      (c.role === 'input' && typeof lastGood(store.state(c)) === 'number') ||
      (c.role !== 'input' && (store.live.isHeld(c) || c.movedBy.length > 0)),
  );
/** What can be changed for the sake of two results, in the order of the page. */
export function choicesForBoth(store: Store, cells: readonly [Cell, Cell]): readonly Cell[] {
  const all = new Set(cells.flatMap((cell) => choicesFor(store, cell)));
  return store.live.graph.order.filter((c) => all.has(c) && !cells.includes(c));
}

/** At first what a hand moves on the page, else what was measured, whatever the order of the cells. */
export function usualOf(choices: readonly Cell[]): Cell | undefined {
  const derived = choices.filter((c) => c.role !== 'input');
  return derived.find((c) => c.movedBy.length > 0) ?? derived[0] ?? choices[0];
}
/** How far it may be changed. */
export const reachOf = (cell: Cell): Range | undefined =>
  cell.slider ?? (cell.role === 'input' ? cell.hard : undefined);

/** What can be wanted besides a result: figures worked out at once. */
export const othersOf = (store: Store, cell: Cell): readonly Cell[] =>
  results(store.catalogue).filter(
    (c) =>
      c !== cell &&
      c.kind.name === 'scalar' &&
      store.live.graph.quick[store.live.graph.slotOf.get(c)!] === 1 &&
      typeof lastGood(store.state(c)) === 'number',
  );
/** The one to begin with: judged, and standing as far as can be on the same as this one. */
export function usualOther(store: Store, cell: Cell): Cell | undefined {
  const others = othersOf(store, cell);
  const own = new Set(choicesFor(store, cell));
  const shared = (c: Cell): number => {
    const choices = choicesFor(store, c);
    return choices.filter((choice) => own.has(choice)).length / choices.length;
  };
  const judged = others.filter((c) => judgesOf(store.catalogue, c).length > 0);
  return judged.toSorted((a, b) => shared(b) - shared(a))[0] ?? others[0];
}
/** What is changed at first for the sake of the second: what it reads itself, typed rather than computed. */
export function usualSecond(choices: readonly Cell[], cell: Cell): Cell | undefined {
  const read = cell.role === 'input' ? [] : Object.values(cell.from);
  const near = choices.filter((c) => read.includes(c));
  return near.find((c) => c.role === 'input') ?? near[0] ?? choices[0];
}
