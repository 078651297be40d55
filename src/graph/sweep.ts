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

/**
 * Runs a sweep in steps; throws NotSettled at once if it has to wait. A slow path takes its points coarsely first, and
 * yields what stands after each, the points to come not numbers.
 */
export function* sweepSteps(at: Snapshot, ask: SweepAsk): Steps<SweepResult> {
  const members = ask.family?.values ?? [undefined];
  const varied = [ask.vary, ...(ask.family ? [ask.family.vary] : []), ...(ask.fixed ?? []).map((f) => f.cell)];
  const probe = new Probe(at, varied, ask.read);
  (ask.fixed ?? []).forEach(({ value }, i) => probe.put(i + (ask.family ? 2 : 1), value));
  const take = ask.take ? (value: unknown, j: number): number => ask.take![j]!(value) : numeric;
  const result = members.map(() => ask.read.map(() => new Float64Array(ask.xs.length).fill(NaN)));
  if (probe.isSlow) return yield* pointByPoint(probe, ask, members, result);
  for (const [m, member] of members.entries()) {
    if (ask.family) probe.put(1, member);
    probe.along(0, ask.xs, result[m]!, take);
    yield (m + 1) / members.length;
  }
  return result;
}

function* pointByPoint(
  probe: Probe,
  ask: SweepAsk,
  members: readonly unknown[],
  result: readonly (readonly Float64Array[])[],
): Steps<SweepResult> {
  const places = coarselyFirst(ask.xs.length);
  const total = places.length * members.length;
  let points = 0;
  for (const i of places)
    for (const [m, member] of members.entries()) {
      if (ask.family) probe.put(1, member);
      probe.put(0, ask.xs[i]!);
      probe.tryRun();
      result[m]!.forEach((line, j) => (line[i] = taken(probe, j, ask.take?.[j] ?? numeric)));
      yield { value: result.map((lines) => lines.map((line) => line.slice())), done: ++points / total };
    }
  return result;
}
/** The places 0 to n - 1: both ends, then the middles of what is left, again and again. */
export function coarselyFirst(n: number): readonly number[] {
  const places = n > 1 ? [0, n - 1] : n === 1 ? [0] : [];
  let gaps: [number, number][] = [[0, n - 1]];
  while (gaps.length > 0) {
    const next: [number, number][] = [];
    for (const [a, b] of gaps) {
      if (b - a < 2) continue;
      const middle = (a + b) >> 1;
      places.push(middle);
      next.push([a, middle], [middle, b]);
    }
    gaps = next;
  }
  return places;
}

/** What is taken from the j-th result, NaN where it has no answer. */
function taken(probe: Probe, j: number, take: (value: unknown) => number): number {
  const value = probe.tryGet(j);
  return value === undefined ? NaN : take(value);
}
