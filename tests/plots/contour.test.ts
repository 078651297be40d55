import { describe, expect, it } from 'vitest';
import { answered, contourLines, region } from '../../src/plots/contour.ts';
import { between, betweenStanding, combined, filledIn, type Grid, type Place, refined } from '../../src/plots/grid.ts';

const gridOf = (across: number, up: number, value: (u: number, v: number) => number): Grid => ({
  across,
  up,
  values: Float64Array.from({ length: across * up }, (_, n) => value(n % across, Math.floor(n / across))),
});
/** The area of rings by the even-odd rule, where inner ones are holes; shoelace formula. */
const areaOf = (rings: readonly (readonly Place[])[]): number =>
  Math.abs(
    rings.reduce(
      (sum, ring) =>
        sum +
        ring.slice(1).reduce((area, [u, v], n) => {
          const [a, b] = ring[n]!;
          return area + (a * v - u * b) / 2;
        }, 0),
      0,
    ),
  );

describe('contour lines', () => {
  it('of a plane are straight and end at the ends of the grid', () => {
    const lines = contourLines(
      gridOf(11, 7, (u, v) => 2 * u + v),
      9.5,
    );
    expect(lines).toHaveLength(1);
    for (const [u, v] of lines[0]!) expect(2 * u + v).toBeCloseTo(9.5, 12);
    const ends = [lines[0]![0]!, lines[0]!.at(-1)!].toSorted(([a], [b]) => a - b);
    expect(ends).toEqual([
      [1.75, 6],
      [4.75, 0],
    ]);
  });
  it('of a cone are circles that close, as round as the grid is fine', () => {
    const lines = contourLines(
      gridOf(41, 41, (u, v) => Math.hypot(u - 20, v - 20)),
      12,
    );
    expect(lines).toHaveLength(1);
    expect(lines[0]![0]).toEqual(lines[0]!.at(-1));
    for (const [u, v] of lines[0]!) expect(Math.abs(Math.hypot(u - 20, v - 20) - 12)).toBeLessThan(1 / (8 * 11));
  });
  it('are all there where there are several, whole wherever a ring happens to begin', () => {
    const saddle = contourLines(
      gridOf(21, 21, (u, v) => (u - 10) * (v - 10)),
      25,
    );
    expect(saddle).toHaveLength(2);
    for (const line of saddle) {
      const ends = [line[0]!, line.at(-1)!];
      for (const [u, v] of ends) expect(u === 0 || v === 0 || u === 20 || v === 20).toBe(true);
    }
  });
  it('are none where the value is not reached, or everything lies above it', () => {
    const grid = gridOf(5, 5, (u, v) => 10 + u + v);
    expect(contourLines(grid, 30)).toEqual([]);
    expect(contourLines(grid, 3)).toEqual([]);
  });
});

describe('the region above a value', () => {
  it('has the area it has, out to the ends of the grid', () => {
    // u + v >= 4 on a square of 10: all but a triangle of 4 by 4.
    const slope = gridOf(11, 11, (u, v) => u + v);
    expect(areaOf(region(slope, 4))).toBeCloseTo(100 - 8, 9);
    expect(areaOf(region(slope, -1))).toBeCloseTo(100, 12);
  });
  it('has holes', () => {
    const dish = region(
      gridOf(41, 41, (u, v) => Math.hypot(u - 20, v - 20)),
      10,
    );
    expect(Math.abs(areaOf(dish) - (1600 - Math.PI * 100)) / 1600).toBeLessThan(0.005);
  });
});

describe('a grid with gaps', () => {
  const half = gridOf(11, 6, (u, v) => (u > 6 ? Number.NaN : 3 * u - v));

  it('is drawn as far as there are answers', () => {
    expect(areaOf(answered(half))).toBeCloseTo(6 * 5, 3);
    const corner = gridOf(4, 4, (u, v) => (u === 3 && v === 3 ? Number.NaN : 1));
    expect(areaOf(answered(corner))).toBeCloseTo(9 - 0.5, 3);
    expect(answered(gridOf(3, 3, () => Number.NaN))).toEqual([]);
  });
  it('goes on past them in a straight line, so that lines reach the last answers', () => {
    const whole = filledIn(half);
    for (let v = 0; v < 6; v++) for (let u = 0; u < 11; u++) expect(whole.values[v * 11 + u]).toBeCloseTo(3 * u - v, 9);
  });
  it('has something to go by even where a single answer is left, or none', () => {
    const one = filledIn(gridOf(5, 4, (u, v) => (u === 2 && v === 1 ? 7 : Number.NaN)));
    expect(new Set(Array.from(one.values))).toEqual(new Set([7]));
    expect(Array.from(filledIn(gridOf(3, 3, () => Number.NaN)).values).every(Number.isFinite)).toBe(true);
  });
});

describe('between the points of a grid', () => {
  it('values lie on straight lines; beyond its ends and beside gaps there are none', () => {
    const grid = gridOf(4, 3, (u, v) => 2 * u - 5 * v + (u === 3 && v === 2 ? Number.NaN : 0));
    expect(between(grid, 1.25, 0.5)).toBeCloseTo(2.5 - 2.5, 12);
    expect(between(grid, 3, 1)).toBeCloseTo(6 - 5, 12);
    for (const [u, v] of [
      [-0.1, 0],
      [0, 2.1],
      [3.1, 0],
      [2.5, 1.5],
      [Number.NaN, 0],
    ] as const)
      expect(between(grid, u, v)).toBeNaN();
  });
  it('a finer grid goes through its points, and bends as a parabola does', () => {
    const grid = gridOf(9, 7, (u, v) => u * u - 3 * v * v + 2 * u * v);
    const fine = refined(grid, 4);
    expect([fine.across, fine.up]).toEqual([33, 25]);
    for (let v = 0; v < 7; v++)
      for (let u = 0; u < 9; u++) expect(fine.values[v * 4 * 33 + u * 4]).toBe(grid.values[v * 9 + u]);
    for (let v = 4; v <= 20; v++)
      for (let u = 4; u <= 28; u++) {
        const [a, b] = [u / 4, v / 4];
        expect(fine.values[v * 33 + u]).toBeCloseTo(a * a - 3 * b * b + 2 * a * b, 9);
      }
  });
  it('two grids of different spacing become one', () => {
    const [a, b] = [gridOf(9, 5, (u, v) => u + 10 * v), gridOf(3, 3, (u, v) => 4 * u + 20 * v)];
    expect(Array.from(combined(a, b, (p, q) => p - q).values).every((d) => Math.abs(d) < 1e-12)).toBe(true);
  });
});

describe('a grid that is still being worked out', () => {
  const whole = gridOf(13, 13, (u, v) => 3 * u + v);
  const standing = (isThere: (u: number, v: number) => boolean): Uint8Array =>
    Uint8Array.from({ length: 169 }, (_, n) => (isThere(n % 13, Math.floor(n / 13)) ? 1 : 0));
  const known = (stands: Uint8Array): Grid => ({
    ...whole,
    values: Array.from(whole.values, (v, n) => (stands[n] === 1 ? v : Number.NaN)),
  });

  it('lies between the points of the finest grid that is whole', () => {
    const stands = standing((u, v) => (u % 2 === 0 && v % 2 === 0) || v === 1);
    const shown = betweenStanding(known(stands), stands)!;
    for (const [n, value] of Array.from(shown.values).entries()) expect(value).toBeCloseTo(whole.values[n]!, 9);
  });
  it('shows a point that stands as it is, a gap too', () => {
    const stands = standing((u, v) => (u % 4 === 0 && v % 4 === 0) || (u === 1 && v === 1));
    const odd = { ...known(stands), values: known(stands).values as number[] };
    odd.values[14] = 99;
    expect(betweenStanding(odd, stands)!.values[14]).toBe(99);
    odd.values[14] = Number.NaN;
    expect(betweenStanding(odd, stands)!.values[14]).toBeNaN();
  });
  it('is not there before its corners are', () => {
    const none = standing(() => false);
    expect(betweenStanding(known(none), none)).toBeNull();
  });
});
