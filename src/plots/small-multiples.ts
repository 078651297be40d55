import type { LineFigure } from './line-figure.ts';
import type { Shown } from './variants.ts';

/** More lines than this are not told apart in one figure. */
const most = 12;

/** A figure of one variant among several, over the same axes. */
export interface Multiple {
  readonly name: string;
  readonly figure: LineFigure;
}

/**
 * One figure for each variant where one for all of them would hold too many lines; else none. The present setting, and
 * the bands it is judged by, belong to the variant the figure is about.
 */
export function smallMultiples(figure: LineFigure, variants: readonly Shown[], self: number): readonly Multiple[] {
  if (figure.lines.length <= most) return [];
  return variants.flatMap(({ name, place }) => {
    const mine = figure.lines.filter((line) => (line.variant ?? self) === place);
    if (mine.length === 0) return [];
    const lines = mine.map((line) => ({ ...line, variant: 0, present: line.present || mine.length === 1 }));
    const label = `${name}. ${figure.label}`;
    return place === self
      ? [{ name, figure: { ...figure, label, lines } }]
      : [{ name, figure: { ...figure, label, lines, mark: null, bands: [], rules: [] } }];
  });
}
