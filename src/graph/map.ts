import type { Cell, Steps } from './cell.ts';
import type { Verdict } from './kind.ts';
import { numeric } from './numeric.ts';
import { Probe } from './probe.ts';
import type { Snapshot } from './snapshot.ts';

/** One varied cell of a map, and its values, SI. */
export interface MapAxis {
  readonly vary: Cell;
  readonly values: readonly number[] | Float64Array;
}
/** Results over two varied cells. */
export interface MapAsk {
  readonly x: MapAxis;
  readonly y: MapAxis;
  /** Cells kept at a value of their own while it runs. */
  readonly fixed?: readonly { readonly cell: Cell; readonly value: unknown }[];
  readonly read: readonly Cell[];
  /** What to take from each result; its figure, if nothing is said. */
  readonly take?: readonly ((value: unknown) => number)[];
  /** What was found before of the same map: a slow path does not go there again. */
  readonly known?: MapResult;
}
export interface MapResult {
  /** For each result its values, row by row, the k-th x of the i-th y at i · (number of xs) + k; NaN is no answer. */
  readonly rows: readonly Float64Array[];
  /** 1 where a point has been worked out, in the same order. */
  readonly stands: Uint8Array;
}

/** What is taken from a value that is read: its figure, or of a verdict one of its edges. */
export const takeOf = ({ edge }: { readonly edge?: number }): ((value: unknown) => number) =>
  edge === undefined ? numeric : (value) => (value as Verdict).edges[edge] ?? NaN;

/**
 * Works a map out in steps. Throws NotSettled at once if it has to wait, Impossible if both axes would move one input.
 * A quick path goes row by row and yields the share done. A slow path takes its points coarsely first, and yields what
 * stands after each.
 */
export function* mapSteps(at: Snapshot, ask: MapAsk): Steps<MapResult> {
  const { x, y, fixed = [], read, take } = ask;
  const probe = new Probe(at, [x.vary, y.vary, ...fixed.map((f) => f.cell)], read);
  fixed.forEach(({ value }, i) => probe.put(i + 2, value));
  const taking = (value: unknown, j: number): number => (take?.[j] ?? numeric)(value);
  return probe.isSlow ? yield* pointByPoint(probe, ask, taking) : yield* rowByRow(probe, ask, taking);
}

function* rowByRow(
  probe: Probe,
  { x, y, read }: MapAsk,
  take: (value: unknown, j: number) => number,
): Steps<MapResult> {
  const [nx, ny] = [x.values.length, y.values.length];
  const rows = read.map(() => new Float64Array(nx * ny).fill(NaN));
  // Along a cell that is moved, its mover is sought once a row: so rows go that way.
  const isAcross = probe.movedTo(1) !== null && probe.movedTo(0) === null;
  const [along, across] = isAcross ? [y.values, x.values] : [x.values, y.values];
  const row = read.map(() => new Float64Array(along.length));
  for (let i = 0; i < across.length; i++) {
    probe.put(isAcross ? 0 : 1, across[i]!);
    probe.along(isAcross ? 1 : 0, along, row, take);
    for (let j = 0; j < rows.length; j++)
      if (!isAcross) rows[j]!.set(row[j]!, i * nx);
      else for (let k = 0; k < ny; k++) rows[j]![k * nx + i] = row[j]![k]!;
    yield (i + 1) / across.length;
  }
  return { rows, stands: new Uint8Array(nx * ny).fill(1) };
}

function* pointByPoint(
  probe: Probe,
  { x, y, read, known }: MapAsk,
  take: (value: unknown, j: number) => number,
): Steps<MapResult> {
  const [nx, ny] = [x.values.length, y.values.length];
  const rows = read.map((_, j) => known?.rows[j]?.slice() ?? new Float64Array(nx * ny).fill(NaN));
  const stands = known?.stands.slice() ?? new Uint8Array(nx * ny);
  const places = coarselyFirstOver(nx, ny).filter((place) => stands[place] === 0);
  const before = nx * ny - places.length;
  for (const [n, place] of places.entries()) {
    probe.put(0, x.values[place % nx]!);
    probe.put(1, y.values[Math.floor(place / nx)]!);
    probe.tryRun();
    rows.forEach((row, j) => {
      const value = probe.tryGet(j);
      row[place] = value === undefined ? NaN : take(value, j);
    });
    stands[place] = 1;
    const value = { rows: rows.map((row) => row.slice()), stands: stands.slice() };
    yield { value, done: (before + n + 1) / (nx * ny) };
  }
  return { rows, stands };
}

/**
 * The grids that a map goes through, coarsest first, as the step between their places; each holds the one before: the
 * corners, then steps half as long each time, as far as they divide the whole. Of 13 places: 12, 4, 2 and 1.
 */
export function gridsOf(n: number): readonly number[] {
  const steps = [1];
  for (let step = 2; step < n - 1 && (n - 1) % step === 0; step *= 2) steps.unshift(step);
  return n > 2 ? [n - 1, ...steps] : steps;
}

/** All places of a map, those of a coarser grid before those of a finer one. */
export function coarselyFirstOver(nx: number, ny: number): readonly number[] {
  const rank = (n: number): number[] => {
    const grids = gridsOf(n);
    return Array.from({ length: n }, (_, k) => grids.findIndex((step) => k % step === 0));
  };
  const [xs, ys] = [rank(nx), rank(ny)];
  const of = (place: number): number => Math.max(xs[place % nx]!, ys[Math.floor(place / nx)]!);
  return Array.from({ length: nx * ny }, (_, place) => place).toSorted((a, b) => of(a) - of(b));
}
