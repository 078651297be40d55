import type { Cell, Range, Steps } from './cell.ts';
import { numeric } from './numeric.ts';
import { Probe } from './probe.ts';
import type { Snapshot } from './snapshot.ts';
import type { Solution } from './solve.ts';
import { coarselyFirst } from './sweep.ts';

/** Places of the first look, even over the range. */
const looks = 5;
/** Places after that, for all answers together. */
const closer = 8;
/** Near enough, as a share of what the first look went through: what is quickly worked out is not surer than that. */
const near = 1e-3;

/** What is still so many times as far off at the end leapt over the target. */
const leap = 10;

interface Point {
  readonly x: number;
  /** How far it is off the target; NaN where there is no answer. */
  readonly miss: number;
}

/**
 * The same as `solve` where each place costs a part of a second: five places over the range, then eight more at most,
 * closing in on the answers between them or, where there are none, on the nearest it comes. Two answers within a
 * quarter of the range can hide each other. What is worked out quickly is off by much the same everywhere: `known` is
 * the result as it is worked out in full at the present setting, and the answer allows for the difference. Yields the
 * share done. Throws NotSettled.
 */
export function* solveSteps(
  at: Snapshot,
  read: Cell,
  target: number,
  vary: Cell,
  [low, high]: Range,
  known?: number,
): Steps<Solution> {
  const probe = new Probe(at, [vary], [read]);
  const points: Point[] = [];
  const valueAt = (x: number): number => {
    probe.put(0, x);
    probe.tryRun();
    const value = probe.tryGet(0);
    return value === undefined ? NaN : numeric(value);
  };
  const bias = known === undefined || !isRough(probe) ? 0 : yield* biasHere(at, vary, valueAt, known);
  const look = (x: number): Point => {
    const point = { x, miss: valueAt(x) - bias - target };
    points.push(point);
    points.sort((a, b) => a.x - b.x);
    return point;
  };
  const done = (): number => points.length / (looks + closer);
  for (const i of coarselyFirst(looks)) {
    look(low + ((high - low) * i) / (looks - 1));
    yield done();
  }
  const answered = (): readonly Point[] => points.filter(({ miss }) => !Number.isNaN(miss));
  const through = Math.max(...answered().map((p) => p.miss)) - Math.min(...answered().map((p) => p.miss));
  const enough = near * through;
  // A hump that stays under the target at the first look may reach it in between.
  while (bracketsIn(points, enough).length === 0 && points.length < looks + closer / 2) {
    const top = summit(answered(), (high - low) / 100);
    if (top === null) break;
    look(top);
    yield done();
  }
  const brackets = bracketsIn(points, enough);
  const values: number[] = [];
  for (const [i, bracket] of brackets.entries()) {
    const most = Math.floor((looks + closer - points.length) / (brackets.length - i));
    const found = yield* closeIn(bracket, look, { most, enough, done });
    if (found !== null) values.push(found);
  }
  if (values.length > 0) return { values: values.toSorted((a, b) => a - b), nearest: null };
  const best = answered().toSorted((a, b) => Math.abs(a.miss) - Math.abs(b.miss))[0];
  return { values, nearest: best ? { at: best.x, gives: best.miss + target } : null };
}

const isRough = ({ path }: Probe): boolean => path.some((c) => c.role === 'slow' && c.rough !== undefined);

/** How far a quick result is over the one in full, at the present setting; 0 where there is nothing to compare. */
function* biasHere(
  at: Snapshot,
  vary: Cell,
  valueAt: (x: number) => number,
  known: number,
): Generator<number, number, void> {
  const state = at.state(at.graph.slotOf.get(vary)!);
  const bias = state.is === 'ready' && typeof state.value === 'number' ? valueAt(state.value) - known : NaN;
  yield 0;
  return Number.isNaN(bias) ? 0 : bias;
}

type Bracket = readonly [Point, Point];

/** Neighbors between which the target is passed, and places that are on it. */
function bracketsIn(points: readonly Point[], enough: number): readonly Bracket[] {
  return points.flatMap((p, i): readonly Bracket[] => {
    const next = points[i + 1];
    if (Math.abs(p.miss) <= enough) return [[p, p]];
    const isPassed = next && Math.abs(next.miss) > enough && p.miss * next.miss < 0;
    return isPassed ? [[p, next]] : [];
  });
}

/** Regula falsi that halves the weight of an end it keeps twice running (Illinois; Dowell and Jarratt, 1971, from memory). */
function* closeIn(
  [a, b]: Bracket,
  look: (x: number) => Point,
  { most, enough, done }: { readonly most: number; readonly enough: number; readonly done: () => number },
): Generator<number, number | null, void> {
  let [left, right, weightLeft, weightRight, kept] = [a, b, a.miss, b.miss, 0];
  let best = Math.abs(a.miss) <= Math.abs(b.miss) ? a : b;
  for (let turn = 0; turn < most && Math.abs(best.miss) > enough; turn++) {
    const point = look(right.x - (weightRight * (right.x - left.x)) / (weightRight - weightLeft));
    yield done();
    if (Number.isNaN(point.miss)) break;
    if (Math.abs(point.miss) < Math.abs(best.miss)) best = point;
    const side = point.miss * left.miss < 0 ? 1 : -1;
    if (side > 0) {
      [right, weightRight] = [point, point.miss];
      if (kept === side) weightLeft /= 2;
    } else {
      [left, weightLeft] = [point, point.miss];
      if (kept === side) weightRight /= 2;
    }
    kept = side;
  }
  return Math.abs(best.miss) <= leap * enough ? best.x : null;
}

/** Where a parabola through the place nearest the target and its neighbors comes nearest; null where that is no news. */
function summit(points: readonly Point[], apart: number): number | null {
  const least = Math.min(...points.map((p) => Math.abs(p.miss)));
  const i = points.findIndex((p) => Math.abs(p.miss) === least);
  const [before, here, after] = [points[i - 1], points[i], points[i + 1]];
  if (!before || !here || !after) return null;
  const [rise, fall] = [(here.miss - before.miss) / (here.x - before.x), (after.miss - here.miss) / (after.x - here.x)];
  const bend = (fall - rise) / (after.x - before.x);
  const x = (before.x + here.x) / 2 - rise / (2 * bend);
  const isNews = x > before.x && x < after.x && points.every((p) => Math.abs(p.x - x) > apart);
  return isNews ? x : null;
}
