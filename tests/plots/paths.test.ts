import { describe, expect, it } from 'vitest';
import type { Band } from '../../src/plots/line-figure.ts';
import { bandPath, linePath } from '../../src/plots/paths.ts';

const x = (v: number): number => v * 10;
/** Up on the page is less, as in svg. */
const y = (v: number): number => 100 - v * 10;
const line = (ys: readonly number[]) => ({ name: '', xs: ys.map((_, i) => i), ys, present: true });
/** The pieces of a path, each as its points. */
const pieces = (d: string): (readonly [number, number])[][] =>
  d
    .split('M')
    .filter((piece) => piece !== '')
    .map((piece) =>
      piece
        .replace(/Z$/, '')
        .split('L')
        .map((point) => point.split(',').map(Number) as [number, number]),
    );

describe('the path of a line', () => {
  it('goes through its points on both scales', () => {
    expect(pieces(linePath(line([1, 2, 5]), x, y))).toEqual([
      [
        [0, 90],
        [10, 80],
        [20, 50],
      ],
    ]);
  });
  it('has a gap where there is no answer, and goes on after it', () => {
    expect(pieces(linePath(line([1, 2, Number.NaN, 4, 5]), x, y)).map((piece) => piece.map(([px]) => px))).toEqual([
      [0, 10],
      [30, 40],
    ]);
  });
  it('has no path where nothing has an answer', () => {
    expect(linePath(line([Number.NaN, Number.NaN]), x, y)).toBe('');
    expect(linePath(line([]), x, y)).toBe('');
  });
  it('never holds what is not a number', () => {
    expect(linePath(line([Number.NaN, 1, Number.POSITIVE_INFINITY, 2]), x, y)).not.toMatch(/NaN|Infinity/);
  });
});

const edges: readonly [number, number] = [20, 80];
const band = (low: readonly number[] | null, high: readonly number[] | null): Band => ({
  tone: 'borderline',
  label: '',
  xs: [0, 1, 2],
  low,
  high,
});
const outline = (b: Band): (readonly [number, number])[] => pieces(bandPath(b, x, y, edges)).flat();
const across = (b: Band): number[] => [...new Set(outline(b).map(([, py]) => py))].toSorted((a, c) => a - c);

describe('the area of a band', () => {
  it('lies between its edges', () => {
    expect(outline(band([3, 3, 4], [5, 6, 7]))).toEqual([
      [0, 50],
      [10, 40],
      [20, 30],
      [20, 60],
      [10, 70],
      [0, 70],
    ]);
  });
  it('is cut off at the edges of the plot', () => {
    expect(across(band([-50, -50, -50], [50, 50, 50]))).toEqual([20, 80]);
    expect(across(band([5, 5, 5], [50, 50, 50]))).toEqual([20, 50]);
  });
  it('is flat where it lies wholly outside', () => {
    expect(across(band([20, 20, 20], [30, 30, 30]))).toEqual([20]);
    expect(across(band([-30, -30, -30], [-20, -20, -20]))).toEqual([80]);
  });
  it('without an upper edge goes to the top, without a lower one to the bottom', () => {
    expect(across(band([5, 5, 5], null))).toEqual([20, 50]);
    expect(across(band(null, [5, 5, 5]))).toEqual([50, 80]);
    expect(across(band(null, null))).toEqual([20, 80]);
  });
  it('has a gap where an edge has no place', () => {
    expect(outline(band([3, Number.NaN, 3], [5, 5, 5])).map(([px]) => px)).toEqual([0, 0, 20, 20]);
    expect(bandPath(band([Number.NaN, Number.NaN, Number.NaN], null), x, y, edges)).toBe('');
  });
});
