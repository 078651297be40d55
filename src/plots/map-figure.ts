import type { Tone } from '../graph/kind.ts';
import type { Twin } from './drawing.ts';
import type { Grid } from './grid.ts';
import type { Axis } from './line-figure.ts';

/** One result over two others, in the units shown. Its axes run evenly from end to end of their domains. */
export interface MapGround {
  readonly x: Axis;
  readonly y: Axis;
  /** What is shown. Its domain is that of the values; it has no axis. */
  readonly z: Pick<Axis, 'title'> & Required<Pick<Axis, 'exact'>>;
  readonly grid: Grid;
  /** Of a slow map, 1 where a point has been worked out; null where all have. */
  readonly stands: ArrayLike<number> | null;
  /** The words of the verdict on it, from the lowest value up; none if nothing judges it. */
  readonly words: readonly { readonly tone: Tone; readonly label: string }[];
  /** What parts the words, in their order: one value over the whole map, or another at each place. */
  readonly edges: readonly Grid[];
  /** Edges that hold elsewhere, dashed. */
  readonly others: readonly Grid[];
}
/** A map with the present setting on it. */
export interface MapPicture {
  /** What there is to see, for who does not see it. */
  readonly label: string;
  readonly ground: MapGround;
  readonly mark: { readonly x: number; readonly y: number; readonly z: number; readonly movable: boolean } | null;
}

/** The same as a table of about nine by nine, the highest y on top as on the map. */
export function mapTwin({ x, y, z, grid, stands }: MapGround): Twin {
  const { across, up, values } = grid;
  const columns = picked(across);
  const text = (place: number): string =>
    Number.isNaN(values[place]!) || (stands && stands[place] !== 1) ? '–' : z.exact(values[place]!);
  const on = ({ domain: [from, to], exact, text }: Axis, k: number, n: number): string =>
    (exact ?? text)(from + ((to - from) * k) / (n - 1));
  return {
    columns: [y.title, ...columns.map((k) => on(x, k, across))],
    rows: picked(up)
      .toReversed()
      .map((i) => [on(y, i, up), ...columns.map((k) => text(i * across + k))]),
  };
}
/** About nine of n places, both ends among them. */
function picked(n: number): readonly number[] {
  const every = Math.max(1, Math.round((n - 1) / 8));
  const places = Array.from({ length: Math.ceil((n - 1) / every) }, (_, k) => k * every);
  return [...places, n - 1];
}

const rank: { readonly [T in Tone]: number } = { comfortable: 0, borderline: 1, beyond: 2 };
/** The graver of the two words that an edge parts. */
export function graverAt({ words }: MapGround, edge: number): MapGround['words'][number] {
  const [below, above] = [words[edge]!, words[edge + 1]!];
  return rank[above.tone] >= rank[below.tone] ? above : below;
}
