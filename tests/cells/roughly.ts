import { drain } from '../../src/graph/cell.ts';
import { faultOf } from '../../src/graph/compute.ts';
import { Live } from '../../src/graph/live.ts';
import type { Runner } from '../../src/graph/runner.ts';
import { present } from '../../src/graph/state.ts';
import type { Store } from '../../src/notebook/store.ts';
import { catalogue, cellOf, inputOf, opened, scenario, valueOf } from '../notebook/notebooks.ts';

/** Slow work as a sweep has it done: roughly where a cell can, at once. */
const roughly: Runner = {
  start({ cell, given }, report) {
    try {
      report({ is: 'ready', value: cell.rough ? cell.rough(given as never) : drain(cell.steps(given as never)) });
    } catch (error) {
      report({ is: 'fault', fault: faultOf(error, cell) });
    }
    return () => {};
  },
};

const stores = new Map<string, Store>();
function storeOf(name: string, variant: string | undefined): Store {
  const key = `${name} ${variant}`;
  const store = stores.get(key) ?? opened(scenario(name), variant);
  stores.set(key, store);
  return store;
}

/** A starting point with some figures changed, SI, its slow work done roughly when it is looked at. */
export function rough(
  figures: Readonly<Record<string, unknown>> = {},
  name = 'edge-of-premium',
  variant?: string,
): Live {
  const store = storeOf(name, variant);
  const live = new Live(catalogue.cells.values(), { runner: roughly });
  for (const cell of catalogue.cells.values()) {
    if (cell.role === 'input') live.set(cell, valueOf(store, cell.id));
    else if (store.live.isHeld(cell)) live.hold(cell, valueOf(store, cell.id));
  }
  for (const [id, value] of Object.entries(figures)) live.set(inputOf(id), value);
  return live;
}

/** The values of cells, by their ids; an error where one has none. */
export function read(live: Live, ...ids: readonly string[]): unknown[] {
  const stop = live.look(ids.map(cellOf));
  live.run();
  const values = ids.map((id) => {
    const state = live.state(cellOf(id));
    const value = present(state);
    if (value === undefined) throw new Error(`${id} has no value: ${JSON.stringify(state)}`);
    return value;
  });
  stop();
  return values;
}
export const figures = (live: Live, ...ids: readonly string[]): number[] => read(live, ...ids) as number[];
