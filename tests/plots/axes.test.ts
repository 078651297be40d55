import { describe, expect, it } from 'vitest';
import { sizeOf } from '../../src/plots/axes.ts';
import type { LineFigure } from '../../src/plots/line-figure.ts';

const figure = (names: readonly string[], highest = '9.5'): LineFigure => ({
  label: '',
  x: { title: '', domain: [0, 1], text: String },
  y: { title: '', domain: [0, 1], text: () => highest },
  lines: names.map((name) => ({ name, xs: [], ys: [], present: false })),
  bands: [],
  rules: [],
  mark: null,
});

describe('the size of a figure', () => {
  it('is the width it is given, and lower on a phone', () => {
    for (const [width, tall, height] of [
      [700, true, 430],
      [700, false, 320],
      [358, true, 360],
      [358, false, 280],
    ] as const)
      expect(sizeOf(figure(['A']), width, tall)).toMatchObject({ width, height });
  });
  it('has room on the right for the longest name, and little where no line is named', () => {
    const margin = (width: number, ...names: string[]): number => sizeOf(figure(names), width).marginRight;
    expect(margin(700, 'A', '70.0 cm³')).toBeGreaterThan(margin(700, 'A'));
    expect(margin(700, '')).toBeLessThan(20);
    expect(margin(700)).toBeLessThan(20);
    expect(margin(358, 'a very long name of a line indeed')).toBeLessThan(100);
  });
  it('has room on the left for the widest tick', () => {
    expect(sizeOf(figure([], '10,000.0'), 700).marginLeft).toBeGreaterThan(sizeOf(figure([], '9'), 700).marginLeft);
  });
  it.each([280, 320, 358, 480, 720, 1600])('leaves most of %s px to the plot', (width) => {
    const size = sizeOf(figure(['70.0 cm³'], '1000'), width);
    expect(size.width - size.marginLeft - size.marginRight).toBeGreaterThan(width * 0.5);
    expect(size.height - size.marginTop - size.marginBottom).toBeGreaterThan(200);
  });
});
