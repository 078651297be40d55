import type { Cell } from '../graph/cell.ts';
import type { Verdict, VerdictKind } from '../graph/kind.ts';
import type { Snapshot } from '../graph/snapshot.ts';
import type { SweepResult } from '../graph/sweep.ts';
import { moverOf } from '../graph/probe.ts';
import type { Store } from '../notebook/store.ts';
import { edgesAlong, isSlow, judgesOf, presentPoint, type Question } from '../notebook/sweeps.ts';
import { type Band, extent, type Line, type LineFigure, withRoom } from '../plots/line-figure.ts';
import { fromUnit, toUnit } from '../units/unit.ts';
import { type Swept, sweepLines } from './sweep-lines.ts';
import { figureOf, lower, quantityOf, senseOf, shownOf } from './words.ts';

/** Turns what a sweep found into a figure in the reader's units. `keep` is a domain of y that is to stay if it can. */
export function sweepFigure(
  store: Store,
  at: Snapshot,
  question: Question,
  swept: Swept,
  keep: readonly [number, number] | null,
): LineFigure {
  const { vary, read, item } = question;
  const show = (cell: Cell, si: number): number => toUnit(si, shownOf(store, cell).unit);
  const slow = isSlow(at, question);
  const xs = question.xs.map((x) => show(vary, x));
  const lines = sweepLines(store, at, question, swept, slow);

  const point = slow ? onLine(at, question, swept.found) : presentPoint(at, question);
  const [low, high] = [Math.min(item.from, item.to), Math.max(item.from, item.to)];
  const inside = point.x >= low - 1e-9 && point.x <= high + 1e-9 && Number.isFinite(point.y);
  const mark = inside ? { x: show(vary, point.x), y: show(read, point.y), movable: isMovable(store, at, vary) } : null;
  const data = extent(lines.map((l) => l.ys)) ?? [0, 1];
  const wanted = withRoom(data);
  const stays =
    keep !== null && keep[0] <= data[0] && keep[1] >= data[1] && data[1] - data[0] > (keep[1] - keep[0]) * 0.35;
  return {
    label: `${read.label} against ${lower(vary.label)}: ${lines.map((l) => `${(l.full ?? l.name) ? `${l.full ?? l.name}, ` : ''}${said(store, read, l)}`).join('; ')}.`,
    x: {
      title: axisTitle(store, vary),
      domain: [whole(xs[0]!), whole(xs.at(-1)!)],
      text: tick(store, vary),
      exact: exact(store, vary),
    },
    y: {
      title: axisTitle(store, read),
      domain: stays ? keep : wanted,
      text: tick(store, read),
      exact: exact(store, read),
    },
    lines,
    bands: bands(store, at, question),
    rules: lowRules(store, at, question),
    mark,
  };
}

/** Where the present setting stands on a slow sweep's own line, between the points found so far. */
function onLine(at: Snapshot, question: Question, found: SweepResult): { readonly x: number; readonly y: number } {
  const state = at.state(at.graph.slotOf.get(question.vary)!);
  const x = state.is === 'ready' && typeof state.value === 'number' ? state.value : NaN;
  const row = found[0]?.[0] ?? new Float64Array();
  const known = question.xs.map((at, i) => [at, row[i]!] as const).filter(([, y]) => Number.isFinite(y));
  const rising = known.toSorted((a, b) => a[0] - b[0]);
  const after = rising.findIndex(([at]) => at >= x);
  if (question.family || after < 0 || (after === 0 && rising[0]![0] > x)) return { x, y: NaN };
  if (after === 0) return { x, y: rising[0]![1] };
  const [[x0, y0], [x1, y1]] = [rising[after - 1]!, rising[after]!];
  return { x, y: y0 + ((y1 - y0) * (x - x0)) / (x1 - x0) };
}

/** Without the last digits that a change of units leaves, so that ticks at the ends are drawn. */
const whole = (v: number): number => Number(v.toPrecision(12));

/** Only what stands by itself, or has something that moves it, can be moved from a figure. */
const isMovable = (store: Store, at: Snapshot, vary: Cell): boolean =>
  vary.role === 'input' || store.live.isHeld(vary) || moverOf(at, vary) !== undefined;

/** Tick figures carry only the digits they need. */
export const tick =
  (store: Store, cell: Cell) =>
  (value: number): string => {
    const { digits, unit } = shownOf(store, cell);
    const text = String(Number(value.toFixed(digits)));
    return `${text.replace('-', '−')}${unit.symbol === '°' ? '°' : ''}`;
  };
export const exact =
  (store: Store, cell: Cell) =>
  (value: number): string => {
    const { unit } = shownOf(store, cell);
    return `${figureOf(store, cell, fromUnit(value, unit))}${unit.symbol === '°' ? '°' : ''}`;
  };
export function axisTitle(store: Store, cell: Cell): string {
  const { symbol } = shownOf(store, cell).unit;
  const sense = senseOf(cell);
  return `${cell.label}${sense ? `, ${sense.words}` : symbol !== '' && symbol !== '°' ? `, ${symbol}` : ''}`;
}
function said(store: Store, read: Cell, line: Line): string {
  const ys = Array.from(line.ys).filter(Number.isFinite);
  if (ys.length === 0) return 'no answer';
  const text = tick(store, read);
  return `from ${text(ys[0]!)} to ${text(ys.at(-1)!)}`;
}

/** The edges of a judge in the reader's units; null where there is none, or it stands on something without a value. */
function edgesOf(store: Store, at: Snapshot, question: Question, judge: Cell<Verdict> | undefined) {
  if (!judge || !quantityOf(judge) || isSlow(at, { ...question, read: judge })) return null;
  const show =
    (cell: Cell) =>
    (si: number): number =>
      toUnit(si, shownOf(store, cell).unit);
  try {
    const { xs, edges } = edgesAlong(at, question, judge);
    if (edges.length === 0) return null;
    return {
      words: (judge.kind as unknown as VerdictKind).words,
      xs: xs.map(show(question.vary)),
      edges: edges.map((edge) => Array.from(edge, show(question.read))),
    };
  } catch {
    return null;
  }
}

/** The caution bands of the first judge, here. */
function bands(store: Store, at: Snapshot, question: Question): Band[] {
  const found = edgesOf(store, at, question, judgesOf(store.catalogue, question.read)[0]);
  if (!found) return [];
  const { words, xs, edges } = found;
  return words.map((word, i) => ({
    tone: word.tone,
    label: word.label,
    xs,
    low: edges[i - 1] ?? null,
    high: edges[i] ?? null,
  }));
}

/** Where another verdict on the same result parts differently by more than this, its edges are drawn as well. */
const apart = 0.1;

/** The edges of the second judge (the lowest altitude's), where they differ from the first one's. */
function lowRules(store: Store, at: Snapshot, question: Question): LineFigure['rules'] {
  const [judge, other] = judgesOf(store.catalogue, question.read);
  const [mine, theirs] = [edgesOf(store, at, question, judge), other ? edgesOf(store, at, question, other) : null];
  if (!mine || !theirs) return [];
  const differ = mine.edges.some((edge, i) => edge.some((v, k) => Math.abs(v - theirs.edges[i]![k]!) > apart));
  if (!differ) return [];
  return theirs.edges.map((ys, i) => ({ label: `${theirs.words[i + 1]!.label}, taken down`, xs: theirs.xs, ys }));
}
