import type { Cell } from './cell.ts';
import type { Graph } from './compile.ts';
import { Probe } from './probe.ts';
import type { Snapshot } from './snapshot.ts';

const trials = 8;

/**
 * What some results are where all of a few cells stand otherwise: each run puts them all and goes the whole path. What a
 * reader may do without (a hydraulic valve's seat needs no lobe) is left out where that shows to make no difference, and
 * a run that has no answer so is run again with it.
 */
export class Draw {
  readonly isSlow: boolean;
  private readonly reads: readonly Cell[];
  private readonly whole: Probe;
  private lean: Probe | null = null;
  /** Runs that still go both ways, to see whether they come to the same. */
  private trial = trials;

  /** Throws NotSettled when something outside its path is not ready. */
  constructor(at: Snapshot, vary: readonly Cell[], reads: readonly Cell[]) {
    this.reads = reads;
    this.whole = new Probe(at, vary, reads);
    this.isSlow = this.whole.isSlow;
    const spare = this.isSlow ? [] : spareOn(at.graph, this.whole.path, reads);
    if (spare.length === 0) return;
    const lean = new Probe(at, [...vary, ...spare], reads, () => undefined);
    spare.forEach((_, i) => lean.put(vary.length + i, undefined));
    this.lean = lean;
  }

  /** Runs with a value for each of the cells, or where all stand as they are; what is returned tells the results. */
  run(values: readonly number[]): Probe {
    const { lean, reads, whole } = this;
    if (lean) {
      runWith(lean, values);
      if (this.trial === 0 && reads.every((_, j) => lean.tryGet(j) !== undefined)) return lean;
    }
    runWith(whole, values);
    if (lean) {
      if (!reads.every((read, j) => isSame(read, lean.tryGet(j), whole.tryGet(j)))) this.lean = null;
      this.trial = Math.max(0, this.trial - 1);
    }
    return whole;
  }
}

function runWith(probe: Probe, values: readonly number[]): void {
  for (let k = 0; k < values.length; k++) probe.put(k, values[k]!);
  probe.tryRun();
}

const isSame = ({ kind }: Cell, a: unknown, b: unknown): boolean =>
  a === undefined || b === undefined ? a === b : kind.same(a, b);

/** The cells of a path that all their readers there may have an answer without. */
function spareOn(graph: Graph, path: readonly Cell[], reads: readonly Cell[]): readonly Cell[] {
  const slots = new Set(path.map((c) => graph.slotOf.get(c)!));
  return path.filter((c) => {
    const slot = graph.slotOf.get(c)!;
    const readers = graph.readers[slot]!.filter((r) => slots.has(r));
    return (
      !reads.includes(c) && readers.every((r) => graph.sources[r]!.every((s, k) => s !== slot || graph.mayLack[r]![k]))
    );
  });
}
