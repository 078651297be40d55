import { contours } from 'd3-contour';
import type { PipeRecord } from './cycle-record.ts';
import { path, type Sheet } from './drawing.ts';
import type { Span } from './panel.ts';

/** Pressure over or under the outside, in the unit shown: row by row, a row for each angle, an entry for each place. */
export interface PressureField {
  readonly angles: readonly number[];
  readonly places: readonly number[];
  readonly values: readonly number[];
}
type Scale = (value: number) => number;

/** The field of a pipe's record, its rows in an order, its pressures as `shown`. */
export function fieldOf(
  { place, pressure }: PipeRecord,
  order: readonly number[],
  angles: readonly number[],
  shown: (pressure: number) => number,
): PressureField {
  const places = Array.from(place);
  return {
    angles,
    places,
    values: order.flatMap((i) => places.map((_, k) => shown(pressure[i * places.length + k]!))),
  };
}

/** Pressures from which on a wave is drawn a shade darker, each twice the one before: weak echoes show beside a blowdown. */
export function shadesFor(most: number): readonly number[] {
  const wanted = Math.max(most, 1e-9) / 7;
  const decade = 10 ** Math.floor(Math.log10(wanted));
  const first = [5, 2.5, 2, 1].find((n) => n * decade <= wanted * 1.0001) ?? 1;
  return [1, 2, 4, 8].map((n) => Number((n * first * decade).toPrecision(3)));
}

/** Where on an axis of samples a place between them lies; half a sample past its ends it is cut off. */
function along(samples: readonly number[], [low, high]: Span): (index: number) => number {
  const last = samples.length - 1;
  return (index) => {
    const i = Math.min(last - 1, Math.max(0, Math.floor(index)));
    const at = samples[i]! + (index - i) * (samples[i + 1]! - samples[i]!);
    return Math.min(high, Math.max(low, at));
  };
}

/** Half a cell beyond the first and the last: the ends of a pipe whose cells' centers are given. */
export const pipeSpan = (places: readonly number[]): Span => [
  0,
  places.at(-1)! + (places.length > 1 ? (places.at(-1)! - places.at(-2)!) / 2 : places[0]!),
];

/** The outlines of where the field is at least some level, one for each level, on two scales. */
export function outlines(field: PressureField, levels: readonly number[], x: Scale, y: Scale): readonly string[] {
  const { angles, places, values } = field;
  const atAngle = along(angles, [angles[0]!, angles.at(-1)!]);
  const atPlace = along(places, pipeSpan(places));
  const find = contours().size([places.length, angles.length]).smooth(true);
  return levels.map((level) =>
    find
      .contour(values as number[], level)
      .coordinates.flat()
      .map((ring) => {
        const spots = ring.map(([k, i]) => `${x(atAngle(i! - 0.5)).toFixed(1)} ${y(atPlace(k! - 0.5)).toFixed(1)}`);
        return `M${spots.filter((spot, n) => spot !== spots[n - 1]).join('L')}Z`;
      })
      .join(''),
  );
}

/** The lining of what pulls. */
export const pullLining = ({ id }: Pick<Sheet, 'id'>): string =>
  `<defs><pattern id="pull-${id}" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path d="M0 0V5" stroke="var(--l3)" stroke-opacity=".55"/></pattern></defs>`;

/** A pipe's pressure as shades: plain ones over the outside, lined ones under it. */
export function pressureMap(field: PressureField, shades: readonly number[], x: Scale, y: Scale, sheet: Sheet): string {
  const shade = (d: string, ink: string): string => path(d, `fill="var(--${ink})" fill-opacity=".2"`);
  const pulls = outlines({ ...field, values: field.values.map((v) => -v) }, shades, x, y);
  return [
    ...outlines(field, shades, x, y).map((d) => shade(d, 'l4')),
    ...pulls.map((d) => shade(d, 'l3')),
    path(pulls[0]!, `fill="url(#pull-${sheet.id})"`),
  ].join('');
}
