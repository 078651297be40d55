import { line, text } from './drawing.ts';
import type { Span } from './panel.ts';

const centers = ['top, firing', 'bottom', 'top', 'bottom', 'top, firing'] as const;

/** The crank's dead centers along the bottom in words, each a faint line through the figure. */
export function crankAxis(
  x: (angle: number) => number,
  [left, right]: Span,
  [top, bottom]: Span,
  narrow: boolean,
): string {
  return (
    line(left, bottom, right, bottom, 'class="axis"') +
    centers
      .map((name, i) => {
        const at = x(i * Math.PI);
        if (at < left - 1 || at > right + 1) return '';
        const anchor = at < left + 30 ? 'start' : at > right - 30 ? 'end' : 'middle';
        return (
          line(at, top, at, bottom, 'class="grid"') +
          line(at, bottom, at, bottom + 5, 'class="axis"') +
          text(at, bottom + 20, narrow ? name.replace(', firing', '') : name, anchor)
        );
      })
      .join('') +
    text(right, bottom + 40, 'Crank angle', 'end')
  );
}
