import type { Tone } from '../graph/kind.ts';
import type { Twin } from './drawing.ts';

/** One axis of a figure, in the unit shown. */
export interface Axis {
  readonly title: string;
  readonly domain: readonly [number, number];
  /** A value as it stands on the axis: "61°". */
  readonly text: (value: number) => string;
  /** A value as it stands in a table, with all the digits it deserves; as on the axis unless this says otherwise. */
  readonly exact?: (value: number) => string;
}
export interface Line {
  /** Stands at the line's end. */
  readonly name: string;
  /** What it is called in a table, if that says more. */
  readonly full?: string;
  /** Its variant's place among them: lines of one variant are dashed alike. */
  readonly variant?: number;
  /** Which of the inks it has, from 1; else the next one. */
  readonly ink?: number;
  readonly xs: ArrayLike<number>;
  /** NaN is a gap. */
  readonly ys: ArrayLike<number>;
  /** The present setting is drawn heavier, in ink. */
  readonly present: boolean;
  /** Each of its points is worth seeing. Some: more are to come, and those found so far are joined over them. */
  readonly dots?: 'some' | 'all';
  /** The points, by index, that are not to be relied on: their dots are hollow. */
  readonly hollow?: readonly number[];
}
/** A caution band: between two edges over x, or open above or below. */
export interface Band {
  readonly tone: Tone;
  readonly label: string;
  readonly xs: ArrayLike<number>;
  readonly low: ArrayLike<number> | null;
  readonly high: ArrayLike<number> | null;
}
/** Lines over an axis, with caution bands behind them and the present setting marked. */
export interface LineFigure {
  /** What there is to see, for who does not see it. */
  readonly label: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly lines: readonly Line[];
  readonly bands: readonly Band[];
  /** Edges that hold elsewhere, dashed, each with its word. */
  readonly rules: readonly { readonly label: string; readonly xs: ArrayLike<number>; readonly ys: ArrayLike<number> }[];
  readonly mark: { readonly x: number; readonly y: number; readonly movable: boolean } | null;
  /** Where the page's crank stands on x, if x is a crank axis and it stands there. */
  readonly cursor?: number;
}

/** The same as a table of some twenty rows, both ends among them. */
export function twinOf({ x, y, lines }: LineFigure): Twin {
  const [first] = lines;
  if (!first) return { columns: [x.title], rows: [] };
  const last = first.xs.length - 1;
  const every = Math.max(1, Math.round(last / 20));
  const [shownX, shownY] = [x.exact ?? x.text, y.exact ?? y.text];
  const row = (i: number): string[] => [
    shownX(first.xs[i]!),
    ...lines.map(({ ys }) => (Number.isFinite(ys[i]!) ? shownY(ys[i]!) : '–')),
  ];
  const rows: string[][] = [];
  for (let i = 0; i < last; i += every) rows.push(row(i));
  if (last >= 0) rows.push(row(last));
  return { columns: [x.title, ...lines.map((l) => l.full ?? (l.name || y.title))], rows };
}

/** The least and largest finite value of some rows, or null where there is none. */
export function extent(rows: Iterable<ArrayLike<number>>): [number, number] | null {
  let low = Infinity;
  let high = -Infinity;
  for (const row of rows)
    for (let i = 0; i < row.length; i++) {
      const v = row[i]!;
      if (v < low) low = v;
      if (v > high) high = v;
    }
  return low <= high ? [low, high] : null;
}

/** A range with a little room, never empty. */
export function withRoom([low, high]: readonly [number, number]): [number, number] {
  const room = (high - low) * 0.06 || Math.abs(high) * 0.05 || 1;
  return [low - room, high + room];
}

/** Moves labels apart to at least `gap`, keeping their order and staying above `most`; returns the places by index. */
export function spacedOut(places: readonly number[], gap: number, most: number): number[] {
  const order = places.map((place, i) => ({ place, i })).toSorted((a, b) => a.place - b.place);
  for (let k = 1; k < order.length; k++) order[k]!.place = Math.max(order[k]!.place, order[k - 1]!.place + gap);
  let limit = most;
  for (let k = order.length - 1; k >= 0; k--) {
    order[k]!.place = Math.min(order[k]!.place, limit);
    limit = order[k]!.place - gap;
  }
  const out: number[] = [];
  for (const { place, i } of order) out[i] = place;
  return out;
}
