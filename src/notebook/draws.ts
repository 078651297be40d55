import { quantileSorted } from 'd3-array';
import type { Cell } from '../graph/cell.ts';
import { isWhen } from '../graph/chapter.ts';
import { upstream } from '../graph/compile.ts';
import type { Drawn, DrawsResult } from '../graph/draws.ts';
import type { Ground, Task } from '../graph/explorer.ts';
import type { Verdict } from '../graph/kind.ts';
import { Probe } from '../graph/probe.ts';
import { bearingOn, type Toleranced } from '../graph/toleranced.ts';
import { type DrawsItem, usualDraws } from './document.ts';
import type { Store } from './store.ts';
import { groundOf, judgesOf } from './sweeps.ts';

/** The same notebook makes the same draws wherever it is opened. */
const seed = 1;

/** What a figure of draws shows, and what is drawn for it. */
export interface DrawsQuestion {
  readonly item: DrawsItem;
  readonly read: Cell;
  /** The verdicts on it. */
  readonly judges: readonly Cell<Verdict>[];
  readonly varied: readonly Toleranced[];
  readonly isSlow: boolean;
}

/** Throws NotSettled when something that it reads has no value. */
export function drawsQuestion(store: Store, item: DrawsItem): DrawsQuestion {
  const { catalogue, live } = store;
  const read = catalogue.cells.get(item.read)!;
  const at = store.snapshot();
  // A verdict that takes long does not hold up a result that does not.
  const judges = judgesOf(catalogue, read).filter((c) => live.isQuick(c) || !live.isQuick(read));
  const varied = bearingOn(at, [read, ...judges], store.tolerances());
  const { isSlow } = new Probe(
    at,
    varied.map((v) => v.cell),
    [read, ...judges],
  );
  return { item, read, judges, varied, isSlow };
}

/** The same as a task for another thread: the draws that follow those already made. */
export function drawsTask(store: Store, question: DrawsQuestion, drawn = 0): Task<'draws'> {
  const { item, read, judges, isSlow } = question;
  const count = isSlow ? usualDraws.count : (item.count ?? usualDraws.count);
  return {
    ...groundUnder(store, [read, ...judges]),
    tolerances: tolerancesOf(question),
    read: [read, ...judges].map((c) => c.id),
    from: drawn,
    count: Math.max(0, count - drawn),
    seed,
    ...(isSlow ? { seconds: item.seconds ?? usualDraws.seconds } : {}),
  };
}
/** What moves the result most, as a task for another thread. */
export const sharesTask = (store: Store, question: DrawsQuestion): Task<'shares'> => ({
  ...groundUnder(store, [question.read]),
  tolerances: tolerancesOf(question),
  read: question.read.id,
});

const tolerancesOf = ({ varied }: DrawsQuestion): Readonly<Record<string, number>> =>
  Object.fromEntries(varied.map(({ cell, tolerance }) => [cell.id, tolerance]));

/** What stands by itself under some results: what they do not stand on may change without their being drawn anew. */
function groundUnder(store: Store, reads: readonly Cell[]): Ground {
  const { graph, stands } = store.snapshot();
  const marks = upstream(
    graph,
    reads.map((c) => graph.slotOf.get(c)!),
    stands,
  );
  const under = <T>(all: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
    Object.fromEntries(Object.entries(all).filter(([id]) => marks[graph.slotOf.get(graph.byId.get(id)!)!] === 1));
  const { inputs, held } = groundOf(store);
  return { inputs: under(inputs), held: under(held) };
}

/** Draws, and those that followed them. */
export function joined(before: DrawsResult | null, more: DrawsResult): DrawsResult {
  if (!before) return more;
  return more.map(({ samples, words, why, here }, j) => {
    const first = before[j]!;
    const both = new Float64Array(first.samples.length + samples.length);
    both.set(first.samples);
    both.set(samples, first.samples.length);
    const all = new Set([...Object.keys(first.words), ...Object.keys(words)]);
    const sum = Object.fromEntries([...all].map((word) => [word, (first.words[word] ?? 0) + (words[word] ?? 0)]));
    return { here, samples: both, words: sum, why: first.why ?? why };
  });
}

/** What there is to say of one result's draws, SI; a place is where that share of the answers lies under it. */
export interface Summary {
  readonly draws: number;
  /** The answers there were, least first. */
  readonly sorted: readonly number[];
  /** 5 %. */
  readonly low: number;
  readonly middle: number;
  /** 95 %. */
  readonly high: number;
  /** 0.1 % and 99.9 %: a far stray is left out. */
  readonly ends: readonly [number, number];
  /** By how much 5 % or 95 % might lie elsewhere with other draws: one standard error of their ranks. */
  readonly doubt: number;
}
export function summaryOf(drawn: Drawn): Summary {
  const known = summaries.get(drawn) ?? summarized(drawn);
  summaries.set(drawn, known);
  return known;
}
const summaries = new WeakMap<Drawn, Summary>();

function summarized({ samples }: Drawn): Summary {
  const sorted = Array.from(samples.filter(Number.isFinite).sort());
  const at = (share: number): number => quantileSorted(sorted, share) ?? NaN;
  const error = Math.sqrt((0.05 * 0.95) / sorted.length);
  return {
    draws: samples.length,
    sorted,
    low: at(0.05),
    middle: at(0.5),
    high: at(0.95),
    ends: [at(0.001), at(0.999)],
    doubt: Math.max(...[0.05, 0.95].map((p) => (at(Math.min(1, p + error)) - at(Math.max(0, p - error))) / 2)),
  };
}

/** The first field of the page under a result, to which a ± could be given. */
export function couldVary(store: Store, read: Cell): Cell | undefined {
  const { graph, stands } = store.snapshot();
  const marks = upstream(graph, [graph.slotOf.get(read)!], stands);
  const isUnder = (c: Cell): boolean => marks[graph.slotOf.get(c)!] === 1 && stands(graph.slotOf.get(c)!);
  const always = store.catalogue.chapters.flatMap((c) => c.fields).filter((f): f is Cell => !isWhen(f));
  return always.find((c) => c.kind.name === 'scalar' && isUnder(c));
}
