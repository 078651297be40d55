import { type Cell, drain, type Input, shareOf, type Steps } from '../graph/cell.ts';
import { upstream } from '../graph/compile.ts';
import type { MapAsked, Task } from '../graph/explorer.ts';
import type { Verdict, VerdictKind } from '../graph/kind.ts';
import { type MapAsk, type MapAxis, type MapResult, mapSteps, takeOf } from '../graph/map.ts';
import { moverOf, Probe } from '../graph/probe.ts';
import { NotSettled, type Snapshot } from '../graph/snapshot.ts';
import { Impossible, lastGood } from '../graph/state.ts';
import { tidy } from '../units/unit.ts';
import type { Catalogue } from './catalogue.ts';
import type { MapAxisItem, MapItem } from './document.ts';
import type { Edit } from './history.ts';
import type { Store } from './store.ts';
import { groundOf, judgesOf } from './sweeps.ts';

/** Points each way: every eighth of a quick map makes its table. */
const points = 65;
/** Edges hardly bend. */
const edgePoints = 17;
/** A slow point costs a part of a second. */
const slowPoints = 13;

/** A map's sentence with its cells found. */
export interface MapQuestion {
  readonly item: MapItem;
  readonly x: MapAxis;
  readonly y: MapAxis;
  readonly read: Cell;
  readonly fixed: readonly { readonly cell: Cell; readonly value: unknown }[];
  /** The verdicts on what is shown, the nearest first. */
  readonly judges: readonly Cell<Verdict>[];
  readonly isSlow: boolean;
}
/** What a map shows, SI. */
export interface MapFound {
  /** The values over the question's axes, row by row; NaN is no answer. */
  readonly values: Float64Array;
  /** 1 where a point has been worked out. */
  readonly stands: Uint8Array;
  /** For each judge its edges, lowest first, each over `edgePoints` of both axes. */
  readonly judged: readonly {
    readonly judge: Cell<Verdict>;
    readonly points: readonly [number, number];
    readonly edges: readonly Float64Array[];
  }[];
}

/** The question as it can be asked now. Throws NotSettled, and Impossible if both axes move one input. */
export function mapQuestionOf(item: MapItem, catalogue: Catalogue, at: Snapshot): MapQuestion {
  const { cells } = catalogue;
  const read = cells.get(item.read)!;
  const fixed = Object.entries(item.fixed ?? {}).map(([id, saved]) => ({
    cell: cells.get(id)!,
    value: cells.get(id)!.kind.restore(saved),
  }));
  const varied = [cells.get(item.x.vary)!, cells.get(item.y.vary)!, ...fixed.map((f) => f.cell)];
  const isSlow = new Probe(at, varied, [read]).isSlow;
  const judges = judgesOf(catalogue, read).filter((judge) => {
    try {
      return new Probe(at, varied, [judge]).isSlow === isSlow;
    } catch (error) {
      if (error instanceof NotSettled) return false; // without it there is a map all the same
      throw error;
    }
  });
  const n = isSlow ? slowPoints : points;
  const axis = (of: MapAxisItem): MapAxis => ({ vary: cells.get(of.vary)!, values: spread(of, n) });
  return { item, read, fixed, judges: judges.slice(0, 2), isSlow, x: axis(item.x), y: axis(item.y) };
}
const spread = ({ from, to }: MapAxisItem, n: number): readonly number[] =>
  Array.from({ length: n }, (_, i) => (i === n - 1 ? to : from + ((to - from) * i) / (n - 1)));

/** Every edge of the judges, as what is read in one go. */
const edgesOf = ({ judges }: MapQuestion): readonly { readonly cell: Cell; readonly edge: number }[] =>
  judges.flatMap((cell) =>
    Array.from({ length: (cell.kind as unknown as VerdictKind).words.length - 1 }, (_, edge) => ({ cell, edge })),
  );

/** Works a quick map out, row by row. */
export function* mapNow(at: Snapshot, question: MapQuestion): Steps<MapFound> {
  const { item, x, y, fixed, read } = question;
  const { rows, stands } = yield* counted(mapSteps(at, { x, y, fixed, read: [read] }), 0, mostOf);
  const edges = edgesOf(question);
  const few: MapAsk = {
    x: { ...x, values: spread(item.x, edgePoints) },
    y: { ...y, values: spread(item.y, edgePoints) },
    fixed,
    read: edges.map(({ cell }) => cell),
    take: edges.map(takeOf),
  };
  const along = edges.length > 0 ? (yield* counted(mapSteps(at, few), mostOf, 1)).rows : [];
  return { values: rows[0]!, stands, judged: judgedOf(question, along, [edgePoints, edgePoints]) };
}
/** The share of a quick map's work that its values are; the rest goes to the edges. */
const mostOf = 0.8;
function* counted<T>(steps: Steps<T>, from: number, to: number): Generator<number, T, void> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield from + (to - from) * shareOf(step.value);
  }
}

function judgedOf(
  { judges }: MapQuestion,
  rows: readonly Float64Array[],
  points: readonly [number, number],
): MapFound['judged'] {
  let at = 0;
  return judges.map((judge) => {
    const edges = rows.slice(at, (at += (judge.kind as unknown as VerdictKind).words.length - 1));
    return { judge, points, edges };
  });
}

/** A slow map as a task for another thread; `known` is what was found of it before. */
export function mapTaskOf(store: Store, question: MapQuestion, known?: MapResult): Task<'map'> {
  const { item, x, y, read } = question;
  const asked: MapAsked = {
    x: { vary: item.x.vary, values: [...x.values] },
    y: { vary: item.y.vary, values: [...y.values] },
    fixed: item.fixed ?? {},
    read: [{ cell: read.id }, ...edgesOf(question).map(({ cell, edge }) => ({ cell: cell.id, edge }))],
    ...(known ? { known } : {}),
  };
  return { ...groundOf(store), ...asked };
}
/** What came back, as a map shows it. */
export function mapFound(question: MapQuestion, { rows, stands }: MapResult): MapFound {
  const { x, y } = question;
  return {
    values: rows[0]!,
    stands,
    judged: judgedOf(question, rows.slice(1), [x.values.length, y.values.length]),
  };
}

/**
 * Tells maps apart by all they stand on, and by nothing else: wherever the point on it is moved, the map is the same,
 * and so it is for inputs that neither result nor axes read.
 */
export function mapKeyOf(store: Store, at: Snapshot, { item, x, y, read, fixed, judges }: MapQuestion): string {
  const { graph } = at;
  const slot = (cell: Cell): number => graph.slotOf.get(cell)!;
  const movers = [x.vary, y.vary].map((cell) => moverOf(at, cell));
  const pinned = new Set([...[x.vary, y.vary].filter((_, k) => !movers[k]), ...fixed.map((f) => f.cell)].map(slot));
  // Several inputs that are shifted together keep what parts them.
  const moved = movers.flatMap((mover) => (mover?.inputs.length === 1 ? mover.inputs : [])).map(slot);
  const reads = upstream(graph, [read, ...judges, x.vary, y.vary].map(slot), (s) => at.stands(s) || pinned.has(s));
  const { inputs, held } = groundOf(store);
  const stands = Object.entries({ ...inputs, ...held }).filter(([id]) => {
    const s = slot(graph.byId.get(id)!);
    return reads[s] === 1 && at.stands(s) && !pinned.has(s) && !moved.includes(s);
  });
  const { id: _, ...asked } = item;
  return JSON.stringify([asked, judges.map((j) => j.id), stands]);
}

/** Where the notebook stands on a map, and a quick map's value there; NaN where there is none. */
export function presentOn(
  at: Snapshot,
  { x, y, read, fixed, isSlow }: MapQuestion,
): { readonly x: number; readonly y: number; readonly z: number } {
  const now = (cell: Cell): number => {
    const value = lastGood(at.state(at.graph.slotOf.get(cell)!));
    return typeof value === 'number' ? value : NaN;
  };
  const place = { x: now(x.vary), y: now(y.vary) };
  if (isSlow || Number.isNaN(place.x) || Number.isNaN(place.y)) return { ...place, z: NaN };
  const one = { x: { ...x, values: [place.x] }, y: { ...y, values: [place.y] }, fixed, read: [read] };
  return { ...place, z: drain(mapSteps(at, one)).rows[0]![0]! };
}

/** True if the point on a map can be moved: each axis stands by itself, or has something that moves it. */
export const isMovableOn = (at: Snapshot, { x, y }: MapQuestion): boolean =>
  [x.vary, y.vary].every((cell) => at.stands(at.graph.slotOf.get(cell)!) || moverOf(at, cell) !== undefined);

/**
 * Moves the notebook to a point of a map in one step: both at once, so that where one axis moves the other's cell both
 * come to where they were put. Throws Impossible if it cannot be there.
 */
export function putOn(
  store: Store,
  { x, y }: Pick<MapQuestion, 'x' | 'y'>,
  to: { readonly x: number; readonly y: number },
  edit: Edit,
): void {
  const cells = [x.vary, y.vary];
  const values = [to.x, to.y];
  const probe = new Probe(store.snapshot(), cells, cells);
  cells.forEach((_, k) => probe.put(k, values[k]));
  probe.run();
  const inputs: [Input, unknown][] = [];
  const held: [Cell, number][] = [];
  cells.forEach((cell, k) => {
    const moved = probe.movedTo(k);
    if (moved) {
      probe.get(k); // throws where it cannot be moved that far
      inputs.push(...moved.map(({ input, value }): [Input, unknown] => [input as Input, tidy(value)]));
    } else if (cell.role === 'input') inputs.push([cell, values[k]]);
    else if (store.live.isHeld(cell)) held.push([cell, values[k]!]);
    else throw new Impossible([`${cell.label} is computed: hold it to set it.`]);
  });
  const one = { ...edit, gesture: edit.gesture ?? {} };
  if (inputs.length > 0) store.set(inputs, one);
  for (const [cell, value] of held) store.hold(cell, value, one);
}
