import { chapters, opening } from '../../../cells/index.ts';
import { drain } from '../../../src/graph/cell.ts';
import { explorations } from '../../../src/graph/explorations.ts';
import type { Explorer } from '../../../src/graph/explorer.ts';
import { Memory } from '../../../src/graph/memory.ts';
import { Others } from '../../../src/notebook/others.ts';
import { Store } from '../../../src/notebook/store.ts';
import { degree, fahrenheit, inch, si } from '../../../src/units/unit.ts';
import { type HandJob, HandRunner } from '../../graph/hand-runner.ts';
import { catalogue, cellOf, inputOf, quick, scenario } from '../../notebook/notebooks.ts';

const runners = new WeakMap<Store, HandRunner>();
/** A notebook's slow cell, which waits for a message. */
export const jobOf = (store: Store): HandJob => runners.get(store)!.last;
export const answer = (store: Store): void => {
  const { cell, given } = jobOf(store);
  jobOf(store).answer(drain(cell.steps(given as never)));
};

/** Brings nothing to its end. */
export const explorer: Explorer = {
  explore: (_kind, _task, report) => {
    report({ is: 'waiting', done: 0.4 });
    return () => {};
  },
};

/** A notebook of its own for a piece, so that its state is nobody else's. */
export function open(name = 'edge-of-premium', change: (store: Store) => void = () => {}): Store {
  const document = scenario(name);
  const runner = new HandRunner();
  const store = new Store({
    catalogue: { ...catalogue, chapters, opening },
    open: { document, opened: document },
    runner,
    explorer,
  });
  store.others = new Others(store, { runner, memory: new Memory() });
  runners.set(store, runner);
  store.watch(quick, () => {}); // so that there is a last good value
  change(store);
  return store;
}
const put =
  (id: string, value: number | string) =>
  (store: Store): void =>
    store.set([[inputOf(id), value]], { what: id });

export const start = open();
export const changed = open('edge-of-premium', put('bore', si(4.03, inch)));
export const hot = open('edge-of-premium', put('airTemperature', si(131, fahrenheit)));
export const shortRod = open('edge-of-premium', put('rod', si(1.5, inch)));
export const unread = open('edge-of-premium', (store) =>
  store.draft(inputOf('stroke'), '“three and a half” cannot be read. Write a figure such as 3.540 in.'),
);
export const moved = open('edge-of-premium', (store) =>
  store.put(cellOf('intakeClosing'), si(66, degree), { what: 'closing' }),
);
export const held = open('edge-of-premium', (store) => store.hold(cellOf('staticRatio'), 9.6, { what: 'held' }));
export const comfortable = open('edge-of-premium', put('chamberVolume', 74.5e-6));
export const beyond = open('edge-of-premium', put('chamberVolume', 66e-6));
export const mountain = open('mountain-six');
export const cams = open('two-cams');
export const bare = open('edge-of-premium', (store) =>
  store.change({ what: 'no ±' }, (draft) => void (draft.tolerances = {})),
);

/** Tells of a map that half of its columns stand, and goes no further. */
export const halfway: Explorer = {
  explore(_, task, report) {
    if (!('x' in task)) return () => {};
    const [across, up] = [task.x.values.length, task.y.values.length];
    const stands = Uint8Array.from({ length: across * up }, (_, n) => (n % 2 === 0 || n < 5 * across ? 1 : 0));
    const values = Float64Array.from(stands, (is, n) => (is === 1 ? 1.1e6 + 2000 * (n % across) + 300 * n : NaN));
    report({ is: 'coming', result: { rows: [values], stands }, done: 0.6 });
    return () => {};
  },
};

/** Works out at once what is asked for a notebook. */
export const atOnce = (store: Store): Explorer => ({
  explore: (kind, task, report) => {
    report({ is: 'ready', result: drain(explorations[kind](store.snapshot(), task, cellOf)) });
    return () => {};
  },
});
