import { type Cell, drain } from '../graph/cell.ts';
import { answersOf } from '../graph/chapter.ts';
import { upstream } from '../graph/compile.ts';
import type { Ground, Task } from '../graph/explorer.ts';
import type { Json, Verdict, VerdictKind } from '../graph/kind.ts';
import { Probe } from '../graph/probe.ts';
import type { Snapshot } from '../graph/snapshot.ts';
import { type SweepAsk, type SweepResult, sweepSteps } from '../graph/sweep.ts';
import { baseValue } from './base.ts';
import type { Catalogue } from './catalogue.ts';
import { layered, type SweepItem } from './document.ts';
import type { Store } from './store.ts';

const points = 161;
/** A slow point costs a part of a second. */
const slowPoints = 17;

/** A sweep's sentence with its cells found and its values restored. */
export interface Question {
  readonly item: SweepItem;
  readonly vary: Cell;
  readonly read: Cell;
  readonly family: { readonly vary: Cell; readonly values: readonly unknown[] } | null;
  readonly fixed: readonly { readonly cell: Cell; readonly value: unknown }[];
  readonly xs: readonly number[];
}

export function questionOf(item: SweepItem, { cells }: Catalogue): Question {
  const member = item.family ? cells.get(item.family.vary)! : null;
  const by = (item.to - item.from) / (points - 1);
  return {
    item,
    vary: cells.get(item.vary)!,
    read: cells.get(item.read)!,
    family: member ? { vary: member, values: item.family!.values.map((v) => member.kind.restore(v)) } : null,
    fixed: Object.entries(item.fixed ?? {}).map(([id, saved]) => ({
      cell: cells.get(id)!,
      value: cells.get(id)!.kind.restore(saved),
    })),
    xs: Array.from({ length: points }, (_, i) => item.from + i * by),
  };
}

const askOf = ({ vary, xs, family, fixed, read }: Question): SweepAsk => ({
  vary,
  xs,
  fixed,
  read: [read],
  ...(family ? { family } : {}),
});

/** True if the sweep's path holds a slow cell, so that it has to run elsewhere. Throws NotSettled. */
export function isSlow(at: Snapshot, question: Question): boolean {
  return new Probe(at, variedBy(question), [question.read]).isSlow;
}
const variedBy = ({ vary, family, fixed }: Question): readonly Cell[] => [
  vary,
  ...(family ? [family.vary] : []),
  ...fixed.map((f) => f.cell),
];

/** One line for each member of the family. Throws NotSettled. */
export const sweepNow = (at: Snapshot, question: Question): SweepResult => drain(sweepSteps(at, askOf(question)));

/** The same question at the few points that slow work is worth. */
export function coarse(question: Question): Question {
  const { from, to } = question.item;
  return { ...question, xs: Array.from({ length: slowPoints }, (_, i) => from + ((to - from) * i) / (slowPoints - 1)) };
}

/** The same as a task for another thread. */
export function taskOf(store: Store, { item, xs }: Question, variant?: string): Task<'sweep'> {
  return {
    ...groundOf(store, variant),
    vary: item.vary,
    xs,
    ...(item.family ? { family: item.family } : {}),
    fixed: item.fixed ?? {},
    read: [item.read],
  };
}
/** What stands by itself in the notebook as it is looked at, or in another variant, saved. */
export function groundOf({ document, catalogue }: Store, variant: string | null = document.chosen): Ground {
  const { inputs, held } = layered(document, variant);
  const all: Record<string, Json> = {};
  for (const cell of catalogue.cells.values())
    if (cell.role === 'input')
      all[cell.id] = inputs[cell.id] ?? baseValue(document.base, cell.id) ?? cell.kind.save(cell.initial);
  return { inputs: all, held };
}

/** The result at the present setting, with what the sweep keeps fixed; NaN if there is none. For quick sweeps. */
export function presentPoint(
  at: Snapshot,
  { vary, read, fixed }: Question,
): { readonly x: number; readonly y: number } {
  const state = at.state(at.graph.slotOf.get(vary)!);
  const x = state.is === 'ready' && typeof state.value === 'number' ? state.value : NaN;
  if (Number.isNaN(x)) return { x, y: NaN };
  try {
    const [[line]] = drain(sweepSteps(at, { vary, xs: [x], fixed, read: [read] })) as [[Float64Array]];
    return { x, y: line[0]! };
  } catch {
    return { x, y: NaN };
  }
}

/** The verdicts that judge a result: those that read it and judge figures of its sort, as the page names them. */
export function judgesOf({ cells, chapters }: Catalogue, read: Cell): readonly Cell<Verdict>[] {
  if (read.kind.name === 'verdict') return [read as Cell<Verdict>];
  const quantity = (read.kind as { quantity?: unknown }).quantity;
  const judges = [...cells.values()].filter(
    (c) =>
      c.role !== 'input' &&
      c.kind.name === 'verdict' &&
      Object.values(c.from).includes(read) &&
      (c.kind as unknown as VerdictKind).quantity === quantity,
  );
  const order = chapters.flatMap(answersOf);
  return judges.toSorted((a, b) => order.indexOf(a) - order.indexOf(b)) as readonly Cell<Verdict>[];
}

/** Edges hardly bend: every tenth point of a sweep is enough to draw them by. */
const everyEdge = 10;

/** The edges of a judge along a sweep, lowest first, at some of its points. Throws NotSettled. */
export function edgesAlong(
  at: Snapshot,
  { vary, xs: all, fixed }: Question,
  judge: Cell<Verdict>,
): { readonly xs: readonly number[]; readonly edges: readonly Float64Array[] } {
  const xs = all.filter((_, i) => i % everyEdge === 0 || i === all.length - 1);
  const state = at.state(at.graph.slotOf.get(judge)!);
  if (state.is !== 'ready') return { xs, edges: [] };
  const count = (state.value as Verdict).edges.length;
  const take = Array.from({ length: count }, (_, i) => (value: unknown) => (value as Verdict).edges[i]!);
  return { xs, edges: drain(sweepSteps(at, { vary, xs, fixed, read: take.map(() => judge), take }))[0]! };
}

/**
 * What a result can be swept against: figures it stands on, directly or through others, and those that are moved by
 * shifting what it stands on: power stands on the lobes, and the closing moves with them.
 */
export function variables(store: Store, read: Cell): readonly Cell[] {
  const { graph } = store.live;
  const stands = upstream(graph, [graph.slotOf.get(read)!]);
  const isReached = (c: Cell): boolean => stands[graph.slotOf.get(c)!] === 1;
  const isMoved = (c: Cell): boolean =>
    c.role !== 'input' && c.movedBy.some(({ inputs }) => inputs.every((input) => isReached(input)));
  return graph.order.filter((c) => (isReached(c) || isMoved(c)) && c !== read && isFigure(c));
}
/** Results that can be shown: any figure something else decides. */
export function results({ cells }: Catalogue): readonly Cell[] {
  return [...cells.values()].filter((c) => c.role !== 'input' && (isFigure(c) || c.kind.name === 'verdict'));
}
const isFigure = (c: Cell): boolean => c.kind.name === 'scalar' || (c.kind.name === 'optional' && c.role === 'input');
