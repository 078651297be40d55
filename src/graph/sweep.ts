import type { Cell, Steps } from './cell.ts';
import { numeric } from './numeric.ts';
import { Probe } from './probe.ts';
import type { Snapshot } from './snapshot.ts';

/** One result against one varied cell, one line for each member of a family. */
export interface SweepAsk {
  readonly vary: Cell;
  /** Values of the varied cell, SI. */
  readonly xs: readonly number[] | Float64Array;
  readonly family?: { readonly vary: Cell; readonly values: readonly unknown[] };
  /** Cells kept at a value of their own while it runs. */
  readonly fixed?: readonly { readonly cell: Cell; readonly value: unknown }[];
  readonly read: readonly Cell[];
  /** What to take from each result; its figure, if nothing is said. */
  readonly take?: readonly ((value: unknown) => number)[];
}

/** For each member of the family, for each result, the values over xs; NaN where a cell has no answer. */
export type SweepResult = readonly (readonly Float64Array[])[];

/** Runs a sweep in steps, each a point or a few; throws NotSettled at once if it has to wait. */
export function* sweepSteps(at: Snapshot, ask: SweepAsk): Steps<SweepResult> {
  const members = ask.family?.values ?? [undefined];
  const varied = [ask.vary, ...(ask.family ? [ask.family.vary] : []), ...(ask.fixed ?? []).map((f) => f.cell)];
  const probe = new Probe(at, varied, ask.read);
  (ask.fixed ?? []).forEach(({ value }, i) => probe.put(i + (ask.family ? 2 : 1), value));
  // A quick path is not worth a pause at each point.
  const pause = probe.isSlow ? 1 : 256;
  const take = ask.take ? (value: unknown, j: number): number => ask.take![j]!(value) : numeric;
  const total = members.length * ask.xs.length;
  const result: Float64Array[][] = [];
  let points = 0;
  for (const member of members) {
    const lines = ask.read.map(() => new Float64Array(ask.xs.length));
    result.push(lines);
    if (ask.family) probe.put(1, member);
    if (!probe.isSlow) {
      probe.along(0, ask.xs, lines, take);
      yield result.length / members.length;
      continue;
    }
    for (let i = 0; i < ask.xs.length; i++) {
      probe.put(0, ask.xs[i]!);
      probe.tryRun();
      for (let j = 0; j < lines.length; j++) lines[j]![i] = taken(probe, j, ask.take?.[j] ?? numeric);
      if (++points % pause === 0) yield points / total;
    }
  }
  return result;
}

/** What is taken from the j-th result, NaN where it has no answer. */
function taken(probe: Probe, j: number, take: (value: unknown) => number): number {
  const value = probe.tryGet(j);
  return value === undefined ? NaN : take(value);
}
