import { answered, region } from './contour.ts';
import { lined, path } from './drawing.ts';
import type { Place } from './grid.ts';
import type { MapGround } from './map-figure.ts';
import type { Levels, Relief } from './map-relief.ts';
import { joined, type MapSheet } from './map-sheet.ts';

type Rings = readonly (readonly Place[])[];
const shape = (rings: Rings, px: MapSheet['px']): string => rings.map((ring) => `${joined(ring.map(px))}Z`).join('');
const whole = ({ frame: { x, y, width, height } }: MapSheet): string => `M${x} ${y}h${width}v${height}h${-width}Z`;

/** The verdict's zones, lined as cautions are; what is comfortable is left blank. */
export function zones({ words }: MapGround, { over }: Relief, sheet: MapSheet, id: string): string {
  const above = [whole(sheet), ...over.map((surface) => shape(region(surface, 0), sheet.px))];
  return words
    .map(({ tone }, i) =>
      tone === 'comfortable'
        ? ''
        : path(`${above[i]!}${above[i + 1] ?? ''}`, `${lined(tone, { id })} fill-rule="evenodd"`),
    )
    .join('');
}

/** Where nothing judges the values: darker from line to line. */
export function tints({ value }: Relief, levels: Levels, sheet: MapSheet): string {
  const above = [whole(sheet), ...levels.map(([level]) => shape(region(value, level), sheet.px))];
  return above
    .map((d, i) => {
      const opacity = 0.06 + (0.24 * i) / Math.max(1, levels.length);
      return path(
        `${d}${above[i + 1] ?? ''}`,
        `fill="var(--ink-2)" fill-rule="evenodd" fill-opacity="${opacity.toFixed(3)}"`,
      );
    })
    .join('');
}

/** Marks cut off where answers end. */
export function cutOff(body: string, { value, known }: Relief, { px }: MapSheet, id: string): string {
  if (!Array.from(known.values).some(Number.isNaN)) return body;
  const [u, v] = [(value.across - 1) / (known.across - 1), (value.up - 1) / (known.up - 1)];
  const d = shape(answered(known), ([k, i]) => px([k * u, i * v]));
  return `<clipPath id="answered-${id}"><path d="${d}" clip-rule="evenodd"/></clipPath><g clip-path="url(#answered-${id})">${body}</g>`;
}
