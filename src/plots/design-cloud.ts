import { scaleLinear } from 'd3-scale';
import { circle, type Drawing, line, path, points, text } from './drawing.ts';
import { extent, withRoom } from './line-figure.ts';

/** A place on both axes, in the units shown. */
type Dot = readonly [x: number, y: number];

interface CloudAxis {
  readonly title: string;
  /** The sign after each figure on it: ° or none. */
  readonly sign: string;
  /** What it covers; as much as there is to show, if nothing is said. */
  readonly domain?: readonly [number, number];
}

/** Designs by two of their figures. */
export interface DesignCloud {
  /** What there is to see, for who does not see it. */
  readonly label: string;
  readonly x: CloudAxis;
  readonly y: CloudAxis;
  /** All that keep within the limits. */
  readonly tried: readonly Dot[];
  /** Those that are told of, in order, and which of them is looked at. */
  readonly shown: readonly Dot[];
  readonly chosen: number;
  /** The present setting. */
  readonly present: Dot | null;
  /** A front is one line; the best of one aim have nothing between them. */
  readonly isFront: boolean;
}

const halo = 'style="paint-order:stroke;stroke:var(--paper);stroke-width:4px;stroke-linejoin:round"';

/** The cloud of designs, and the places of those that are told of, in px. */
export function designCloud(
  { label, x: across, y: up, tried, shown, chosen, present, isFront }: DesignCloud,
  width: number,
): Omit<Drawing, 'twin'> & { readonly places: readonly Dot[] } {
  const narrow = width < 480;
  // What is told of fills the picture: of all else that was tried there is to be seen what stands near.
  const told = [...shown, ...(present ? [present] : [])];
  const over = (k: 0 | 1): readonly [number, number] => {
    const [low, high] = withRoom(extent([told.map((dot) => dot[k])]) ?? [0, 1]);
    return [low - (high - low) * 0.25, high];
  };
  const y0 = scaleLinear(over(1), [narrow ? 230 : 310, 36]).nice();
  const count = narrow ? 4 : 6;
  const ups = ticksOf(y0, count, up);
  const left = Math.max(34, ...ups.map(([, words]) => words.length * 7.5 + 12));
  const [right, top, bottom] = [width - 16, 36, narrow ? 230 : 310];
  const x0 = scaleLinear(across.domain ?? over(0), [left + 8, right]);
  const at = ([x, y]: Dot): Dot => [x0(x), y0(y)];
  const places = shown.map(at);
  const dots = (of: readonly Dot[], r: number, look: string): string =>
    of
      .map(at)
      .map(([px, py]) => circle(px, py, r, look))
      .join('');
  const here = places[chosen];
  const now = present && at(present);
  const body = [
    text(0, 14, up.title),
    ...ups.map(
      ([t, words]) => line(left, y0(t), right, y0(t), 'class="grid"') + text(left - 8, y0(t) + 4, words, 'end'),
    ),
    line(left, bottom, right, bottom, 'class="axis"'),
    ...ticksOf(x0, count, across).map(
      ([t, words]) =>
        line(x0(t), bottom, x0(t), bottom + 5, 'class="axis"') + text(x0(t), bottom + 20, words, 'middle'),
    ),
    text(right, bottom + 42, across.title, 'end'),
    dots(
      tried.filter((dot) => [x0, y0].every((scale, k) => isOn(scale.domain(), dot[k]!))),
      2,
      'fill="var(--edge)" fill-opacity=".6"',
    ),
    isFront && places.length > 1 ? path(points(places), 'fill="none" stroke="var(--l1)" stroke-width="1.5"') : '',
    dots(shown, 4, 'fill="var(--l1)" stroke="var(--paper)" stroke-width="1.5"'),
    now
      ? path(`M${now[0]} ${now[1] - 6}l6 6l-6 6l-6 -6z`, 'fill="var(--paper)" stroke="var(--ink)" stroke-width="1.5"') +
        text(
          now[0] + (now[0] > right - 60 ? -12 : 12),
          now[1] + 4.5,
          'now',
          now[0] > right - 60 ? 'end' : 'start',
          '',
          halo,
        )
      : '',
    here
      ? circle(here[0], here[1], 6, 'fill="var(--hand)" stroke="var(--paper)" stroke-width="2"') +
        text(
          Math.min(right - 20, Math.max(left + 20, here[0])),
          here[1] < top + 18 ? here[1] + 24 : here[1] - 13,
          `no. ${chosen + 1}`,
          'middle',
          'hand',
          halo,
        )
      : '',
  ].join('');
  return { width, height: bottom + 50, label, body, places };
}

const isOn = (domain: readonly number[], v: number): boolean => v >= Math.min(...domain) && v <= Math.max(...domain);
/** The ticks of an axis, all with as many decimals as the finest of them needs. */
function ticksOf(
  scale: ReturnType<typeof scaleLinear<number, number>>,
  count: number,
  { sign }: CloudAxis,
): (readonly [number, string])[] {
  const words = scale.tickFormat(count);
  return scale.ticks(count).map((t) => [t, `${words(t).replaceAll(',', '')}${sign}`] as const);
}
