import { halo, path, text } from './drawing.ts';
import { spacedOut } from './line-figure.ts';
import { type BySpeed, smooth } from './speed-axis.ts';
import { type Overlaid, type Shown, strokeOf, type WithOthers } from './variants.ts';

type Scale = (value: number) => number;

/** The speeds from the first to the last of any variant, rad/s. */
export const spanOf = (curves: readonly BySpeed[]): readonly [number, number] => [
  Math.min(...curves.map(({ x }) => x[0]!)),
  Math.max(...curves.map(({ x }) => x[x.length - 1]!)),
];

/** A line by speed of each other variant, thin and dashed; `curveOf` gives it in the unit shown. */
export const otherLines = <V>(
  { others = [] }: WithOthers<V>,
  curveOf: (values: V) => BySpeed,
  [x, y]: readonly [Scale, Scale],
  ink: string,
): string =>
  others
    .map(({ values, place }) => {
      const curve = curveOf(values);
      const d = smooth(Array.from(curve.x, (s, i): [number, number] => [x(s), y(curve.y[i]!)]));
      return path(d, `fill="none" stroke="var(--${ink})" ${strokeOf(place, 1.75)}`);
    })
    .join('');

/** How a figure's own line is stroked, as attributes: in its variant's way where others are shown. */
export const ownStroke = <V>({ self, others = [] }: WithOthers<V>, width: number): string =>
  strokeOf(others.length > 0 ? (self?.place ?? 0) : 0, width);

/** The variants' names over the right ends of their lines; none where only one is shown. */
export function variantNames<V>(
  own: V,
  { self, others = [] }: WithOthers<V>,
  curveOf: (values: V) => BySpeed,
  y: Scale,
  [right, bottom]: readonly [number, number],
): string {
  if (others.length === 0 || !self) return '';
  const all: readonly Overlaid<V>[] = [{ ...self, values: own }, ...others];
  const ends = all.map(({ values }) => {
    const { y: ys } = curveOf(values);
    return y(ys[ys.length - 1]!);
  });
  const places = spacedOut(ends, 16, bottom - 4);
  return all
    .map(({ name }: Shown, i) => text(right - 4, places[i]! - 6, name, 'end', i === 0 ? 'strong' : '', halo))
    .join('');
}
