import { line, text } from './drawing.ts';
import { spacedOut } from './line-figure.ts';

/** Names at the ends of lines, moved apart where the lines end close together. */
export function lineNames(
  ends: readonly { readonly name: string; readonly y: number }[],
  x: number,
  most: number,
): string {
  const places = spacedOut(
    ends.map((end) => end.y),
    16,
    most,
  );
  return ends
    .map(
      ({ name, y }, i) =>
        line(x + 3, y, x + 9, places[i]!, 'stroke="var(--edge)"') +
        text(x + 12, places[i]! + 4, name, 'start', 'strong'),
    )
    .join('');
}
