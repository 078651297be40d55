import { valueAt } from './cursor.ts';
import { circle, halo, text } from './drawing.ts';
import { spacedOut } from './line-figure.ts';
import { fixed, type Span } from './panel.ts';

/** A line over the crank's angle, in the unit shown. */
export interface Trace {
  readonly name: string;
  readonly ink: string;
  readonly y: readonly number[];
}

/** What lines over the crank's angle are where its cursor stands: a dot on each, and its value beside the cursor. */
export function cursorValues(
  traces: readonly Trace[],
  angles: readonly number[],
  cursor: number,
  { x, y }: { readonly x: (angle: number) => number; readonly y: (value: number) => number },
  [top, bottom]: Span,
  { digits, isLeft }: { readonly digits: number; readonly isLeft: boolean },
): string {
  const now = traces.map((trace) => valueAt({ x: angles, y: trace.y }, cursor));
  const at = now.map((value) => Math.max(top, Math.min(bottom, y(value))));
  const places = spacedOut(at, 16, bottom - 4);
  return traces
    .map(
      ({ name, ink }, i) =>
        circle(x(cursor), at[i]!, 3.5, `fill="var(--${ink})" stroke="var(--paper)" stroke-width="1.5"`) +
        text(
          x(cursor) + (isLeft ? -10 : 10),
          places[i]! + 4,
          `${name} ${fixed(now[i]!, digits)}`,
          isLeft ? 'end' : 'start',
          'strong',
          halo,
        ),
    )
    .join('');
}
