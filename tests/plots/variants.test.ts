import { describe, expect, it } from 'vitest';
import { type Line, type LineFigure, twinOf } from '../../src/plots/line-figure.ts';
import { smallMultiples } from '../../src/plots/small-multiples.ts';
import { strokeOf } from '../../src/plots/variants.ts';

describe('the lines of a variant', () => {
  it('are dashed in a way of their own, the first not at all', () => {
    const strokes = [0, 1, 2, 3].map((place) => strokeOf(place, 1.75));
    expect(strokes[0]).toBe('stroke-width="1.75"');
    expect(new Set(strokes).size).toBe(4);
    expect(strokes[1]).toContain('stroke-dasharray="8 4"');
  });
  it('that are dots are round, and stand out as much as the others', () => {
    const width = Number(/stroke-width="([\d.]+)"/.exec(strokeOf(2, 1.75))![1]);
    expect(width).toBeCloseTo(2.4, 2);
    expect(strokeOf(2, 1.75)).toContain('stroke-linecap="round"');
    expect(strokeOf(2, 1.75)).toContain('stroke-dasharray=".1 5"');
  });
});

const line = (variant: number, member: number, present = false): Line => ({
  name: `member ${member}`,
  full: `member ${member} of ${variant}`,
  xs: [0, 1],
  ys: [variant, member],
  present,
  variant,
});
const figureOf = (lines: readonly Line[]): LineFigure => ({
  label: 'Something against another.',
  x: { title: 'x', domain: [0, 1], text: String },
  y: { title: 'y', domain: [0, 9], text: String },
  lines,
  bands: [{ tone: 'borderline', label: 'borderline', xs: [0, 1], low: [1, 1], high: [2, 2] }],
  rules: [],
  mark: { x: 0.5, y: 1, movable: true },
});
const variants = ['early', 'middle', 'late'].map((name, place) => ({ name, place }));
const lines = (members: number): Line[] =>
  variants.flatMap(({ place }) => Array.from({ length: members }, (_, i) => line(place, i, place === 1 && i === 0)));

describe('a figure of several variants', () => {
  it('is one as long as it holds no more than twelve lines', () => {
    expect(smallMultiples(figureOf(lines(4)), variants, 1)).toEqual([]);
  });
  it('of more is one for each variant, with its lines over the same axes', () => {
    const whole = figureOf(lines(5));
    const parts = smallMultiples(whole, variants, 1);
    expect(parts.map((p) => p.name)).toEqual(['early', 'middle', 'late']);
    parts.forEach(({ figure, name }, place) => {
      expect(figure.lines.map((l) => l.ys)).toEqual(whole.lines.filter((l) => l.variant === place).map((l) => l.ys));
      expect([figure.x, figure.y]).toEqual([whole.x, whole.y]);
      expect(figure.label).toContain(name);
    });
  });
  it('of which only the one it is about has the mark and the bands', () => {
    const parts = smallMultiples(figureOf(lines(5)), variants, 1);
    expect(parts.map(({ figure }) => [figure.mark !== null, figure.bands.length])).toEqual([
      [false, 0],
      [true, 1],
      [false, 0],
    ]);
  });
  it('has a table that names each line in full', () => {
    const { columns } = twinOf(figureOf(lines(2)));
    expect(columns).toEqual(['x', ...variants.flatMap((_, v) => [0, 1].map((m) => `member ${m} of ${v}`))]);
  });
});
