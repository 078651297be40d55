import type { Cell, Range } from './cell.ts';
import { numeric } from './numeric.ts';
import { Probe } from './probe.ts';
import type { Snapshot } from './snapshot.ts';
import { Impossible } from './state.ts';

export type Pair<T = number> = readonly [T, T];

/** Two results wanted at once, and the two values they are wanted by, all SI. */
export interface PairSearch {
  readonly read: Pair<Cell>;
  readonly targets: Pair;
  readonly vary: Pair<Cell>;
  readonly ranges: Pair<Range>;
}

/**
 * Why two values do not set two results apart. idle: that value moves neither result; fixed: neither value moves that
 * result; together: both values move both results in one proportion.
 */
export type Bond = { readonly is: 'idle' | 'fixed'; readonly which: 0 | 1 } | { readonly is: 'together' };

/** One pair of values at which both results reach their targets; where none was found, the nearest. */
export interface PairSolution {
  readonly values: Pair | null;
  readonly nearest: { readonly at: Pair; readonly gives: Pair } | null;
  readonly bond: Bond | null;
}

/** A place in the square both ranges are mapped to, what is missed there in shares of each result's way, and what it gives. */
interface Place {
  readonly at: Pair;
  readonly miss: Pair;
  readonly gives: Pair;
  readonly off: number;
}
/** For each value, how both results change with it. */
type Slopes = Pair<Pair>;

/** Places along each side of the square that are looked at first. */
const side = 7;
const turns = 60;
/** Near enough, as a share of each result's way over the square. */
const enough = 1e-11;
/** What rounding and the search for a mover's shift leave; more than this is a miss. */
const found = 1e-8;
const step = 1e-5;

/**
 * Finds two values at which two results reach two targets: damped Gauss-Newton steps inside the bounds (Levenberg 1944,
 * Marquardt 1963, from memory) from the present point and then from the best of a seven by seven grid. It finds one
 * answer of perhaps several. The nearest is the least sum of squares, each result measured by how far it goes over the
 * grid. What nobody can see at once is not looked for: throws Impossible where slow work is on the way, or where one
 * input would move both values; NotSettled where something has no settled value.
 */
export function solvePair(at: Snapshot, { read, targets, vary, ranges }: PairSearch): PairSolution {
  const probe = new Probe(at, vary, read);
  if (probe.isSlow) throw new Impossible(['Two at once is for results that are worked out at once.']);
  const value = ([u, v]: Pair): Pair => [within(ranges[0], u), within(ranges[1], v)];
  const results = (place: Pair): Pair => {
    const [x, y] = value(place);
    probe.put(0, x);
    probe.put(1, y);
    probe.tryRun();
    return [numeric(probe.tryGet(0)), numeric(probe.tryGet(1))];
  };
  const grid = Array.from({ length: side * side }, (_, i): Pair => {
    const cut = (k: number): number => k / (side - 1);
    return [cut(i % side), cut(Math.floor(i / side))];
  }).map((place) => ({ place, gives: results(place) }));
  const spans = [0, 1].map((j) => spanOf(grid.map(({ gives }) => gives[j]!).filter(Number.isFinite)));
  const lengths = spans.map(([low, high], j) => lengthOf(low, high, targets[j]!)) as [number, number];
  const look = (place: Pair, gives = results(place)): Place => {
    const miss: Pair = [(gives[0] - targets[0]) / lengths[0], (gives[1] - targets[1]) / lengths[1]];
    return { at: place, miss, gives, off: Math.hypot(...miss) };
  };

  const looked = grid.map(({ place, gives }) => look(place, gives)).filter(({ off }) => Number.isFinite(off));
  const starts = [...presentPlace(at, vary, ranges, look), ...looked.toSorted((a, b) => a.off - b.off).slice(0, 6)];
  let best: Place | undefined;
  for (const start of starts) {
    const end = descend(start, look, lengths);
    if (!best || end.off < best.off) best = end;
    if (best.off <= enough) break;
  }
  const isInside = ({ at }: Place): boolean => at.every((x) => x > 0 && x < 1); // slopes to both sides are surer
  const scales = spans.map(([low, high]) => high - low || 1) as [number, number];
  const bond = bondOf(looked.filter(isInside).map((place) => slopesAt(place, look, scales)));
  if (!best) return { values: null, nearest: null, bond };
  return best.off <= found
    ? { values: value(best.at), nearest: null, bond }
    : { values: null, nearest: { at: value(best.at), gives: best.gives }, bond };
}

const within = ([low, high]: Range, share: number): number => low + (high - low) * share;
const spanOf = (values: readonly number[]): Pair =>
  values.length === 0 ? [0, 0] : [Math.min(...values), Math.max(...values)];
/** How far a result goes over the square, and on to its target if that lies outside; never nothing. */
const lengthOf = (low: number, high: number, target: number): number =>
  Math.max(high, target) - Math.min(low, target) || Math.abs(target) || 1;

/** Where the values stand now, if that is inside the ranges and has an answer. */
function presentPlace(
  at: Snapshot,
  vary: Pair<Cell>,
  ranges: Pair<Range>,
  look: (place: Pair) => Place,
): readonly Place[] {
  const [u, v] = vary.map((c, k) => {
    const state = at.state(at.graph.slotOf.get(c)!);
    const now = state.is === 'ready' ? numeric(state.value) : NaN;
    return (now - ranges[k]![0]) / (ranges[k]![1] - ranges[k]![0]);
  }) as [number, number];
  if (!(u >= 0 && u <= 1 && v >= 0 && v <= 1)) return [];
  const place = look([u, v]);
  return Number.isFinite(place.off) ? [place] : [];
}

/** Down from a start, as far as it goes inside the square. */
function descend(start: Place, look: (place: Pair) => Place, lengths: Pair): Place {
  let [here, damping] = [start, 1e-6];
  let slopes = slopesAt(here, look, lengths);
  for (let turn = 0; turn < turns && here.off > enough; turn++) {
    const [du, dv] = stepFrom(here, slopes, damping);
    const next = look([inSquare(here.at[0] + du), inSquare(here.at[1] + dv)]);
    if (next.at[0] === here.at[0] && next.at[1] === here.at[1]) break;
    if (next.off < here.off) {
      [here, damping] = [next, Math.max(1e-14, damping / 10)];
      slopes = slopesAt(here, look, lengths);
    } else damping *= 8;
    if (damping > 1e9) break;
  }
  return here;
}

/** The step of least damped squares. What stands at a bound and would leave it stays where it is. */
function stepFrom({ at, miss }: Place, [a, b]: Slopes, damping: number): Pair {
  const [pull, push] = [-dot(a, miss), -dot(b, miss)];
  const isFree = (x: number, way: number): boolean => !((x <= 0 && way < 0) || (x >= 1 && way > 0));
  const [aa, bb] = [dot(a, a), dot(b, b)];
  const [p, q, ab] = [aa * (1 + damping) + tiny, bb * (1 + damping) + tiny, dot(a, b)];
  if (!isFree(at[0], pull)) return [0, isFree(at[1], push) ? push / q : 0];
  if (!isFree(at[1], push)) return [pull / p, 0];
  const det = p * q - ab * ab;
  return det > 0 ? [(q * pull - ab * push) / det, (p * push - ab * pull) / det] : [pull / p, push / q];
}
const tiny = 1e-200;
const dot = (a: Pair, b: Pair): number => a[0] * b[0] + a[1] * b[1];
const inSquare = (x: number): number => Math.min(1, Math.max(0, x));

/** Slopes of both results, each over its scale, from a small step to both sides or to the one that has an answer. */
function slopesAt(here: Place, look: (place: Pair) => Place, scales: Pair): Slopes {
  const along = (k: 0 | 1): Pair => {
    const moved = (by: number): Pair => {
      const x = inSquare(here.at[k] + by);
      return k === 0 ? [x, here.at[1]] : [here.at[0], x];
    };
    const ends = [look(moved(-step)), look(moved(step))].map((end) => (Number.isFinite(end.off) ? end : here));
    const [low, high] = ends as [Place, Place];
    const run = high.at[k] - low.at[k];
    const slope = (j: 0 | 1): number => (run > 0 ? (high.gives[j] - low.gives[j]) / scales[j] / run : 0);
    return [slope(0), slope(1)];
  };
  return [along(0), along(1)];
}

/** What keeps two values from setting two results apart wherever it was looked. */
function bondOf(all: readonly Slopes[]): Bond | null {
  if (all.length === 0) return null;
  const [none, slight] = [1e-9, 1e-5];
  const every = (holds: (slopes: Slopes) => boolean): boolean => all.every(holds);
  for (const which of [0, 1] as const) {
    if (every((s) => Math.hypot(...s[which]) <= none)) return { is: 'idle', which };
    if (every((s) => Math.abs(s[0][which]) + Math.abs(s[1][which]) <= none)) return { is: 'fixed', which };
  }
  const isFlat = ([a, b]: Slopes): boolean =>
    Math.abs(a[0] * b[1] - a[1] * b[0]) <= slight * Math.hypot(...a) * Math.hypot(...b);
  return every(isFlat) ? { is: 'together' } : null;
}
