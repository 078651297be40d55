import { box, path, type Sheet } from './drawing.ts';
import type { Span } from './panel.ts';

/**
 * A line that is drawn at half its width where it is not to be relied on.
 *
 * @param d the whole line
 * @param spans where on x it may be relied on, px
 * @param name tells it apart from others of the sheet
 */
export function halvedLine(
  d: string,
  spans: readonly Span[],
  { ink, width }: { readonly ink: string; readonly width: number },
  [top, bottom]: Span,
  name: string,
  { id }: Pick<Sheet, 'id'>,
): string {
  const clip = `${name}-${id}`;
  const look = (wide: number): string =>
    `fill="none" stroke="var(--${ink})" stroke-width="${wide}" stroke-linejoin="round"`;
  return (
    `<clipPath id="${clip}">${spans.map(([from, to]) => box(from, top, to - from, bottom - top, '')).join('')}</clipPath>` +
    path(d, look(width / 2)) +
    path(d, `${look(width)} clip-path="url(#${clip})"`)
  );
}

/** The same for a line by engine speed, which is not to be relied on under 2000 rpm. */
export const leastTrusted = (2000 * 2 * Math.PI) / 60; // rad/s: the torque of the cycle reads high under it
