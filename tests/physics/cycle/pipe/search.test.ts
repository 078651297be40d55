import { describe, expect, it } from 'vitest';
import { Search } from '../../../../src/physics/cycle/pipe/search.ts';

/** Lets a search find the zero of a function; returns how often the function was asked. */
function find(search: Search, f: (x: number) => number, low: number, high: number, near = 1e-9): number {
  search.begin(low, high, 0.5 * (low + high), 1);
  for (let asked = 1; ; asked++) {
    const value = f(search.x);
    if (Math.abs(value) < near || !search.next(value)) return asked;
  }
}

describe('a search', () => {
  it('finds zeros of functions that rise steeply, slowly, or mostly in one spot', () => {
    const functions: readonly ((x: number) => number)[] = [
      (x) => x - 0.3,
      (x) => 1e6 * (x - 0.3),
      (x) => (x - 0.3) ** 3,
      (x) => Math.cbrt(x - 0.3),
      (x) => Math.atan(1e5 * (x - 0.3)),
    ];
    for (const f of functions) {
      const search = new Search();
      find(search, f, 0, 1, 1e-9);
      expect(search.x).toBeCloseTo(0.3, 2);
      expect(Math.abs(f(search.x))).toBeLessThan(1e-3);
    }
  });

  it('is not held up by what it remembers of a far steeper function, even where the new one does not rise', () => {
    const search = new Search();
    find(search, (x) => 1e8 * (x - 0.01), 0, 1);
    // like a flow that is choked up to a pressure: flat, then rising
    const choked = (x: number): number => (x < 0.7 ? -0.3 - 1e-7 * x : x - 1);
    find(search, choked, 0, 2, 1e-6);
    expect(search.x).toBeCloseTo(1, 5);
  });

  it('needs one look at a function that moves along evenly', () => {
    const search = new Search();
    const looks = [0, 1, 2, 3, 4, 5].map((turn) => find(search, (x) => x - (0.2 + 0.1 * turn), 0, 1, 1e-6));
    expect(looks.slice(2)).toEqual([1, 1, 1, 1]);
  });

  it('begins between its bounds wherever the last answer was', () => {
    const search = new Search();
    search.take(500);
    search.take(900);
    search.begin(2, 4, 3, 1);
    expect(search.x).toBe(3);
    search.begin(2, 4, 7, 1);
    expect(search.x).toBe(3); // the last answer
    search.reset();
    search.begin(2, 6, 7, 1);
    expect(search.x).toBe(4);
  });
});
