import { describe, expect, it } from 'vitest';
import { best } from '../../src/graph/best.ts';
import { frontOf, type Sense } from '../../src/graph/front.ts';
import { type Ask, type Figures, type Found, isGood, type Problem, type Span } from '../../src/graph/problem.ts';

/** A linear congruential generator, so that a seed gives the same figures everywhere. */
function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => (state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0) / 2 ** 32;
}
type Truth = (at: readonly number[]) => Figures;

/** Answers a search until it ends, or until `until` says so; counts what it asked for. */
function search(
  problem: Omit<Problem, 'random'>,
  truth: Truth,
  { seed = 7, until = () => false }: { readonly seed?: number; readonly until?: (ask: Ask) => boolean } = {},
): { readonly found: Found; readonly asked: number; readonly screened: number } {
  const steps = best({ ...problem, random: dice(seed) });
  let [asked, screened] = [0, 0];
  let step = steps.next();
  while (!step.done && !until(step.value)) {
    const { of, designs } = step.value;
    if (of === 'all') asked += designs.length;
    else screened += designs.length;
    const all = designs.map(truth);
    step = steps.next(
      of === 'all'
        ? all
        : all.map(({ excess }) => ({ aims: [], excess: excess.map((e, k) => (problem.quick[k] ? e : NaN)) })),
    );
  }
  return { found: step.done ? step.value : step.value.found, asked, screened };
}
const cube = (dimensions: number, more: Partial<Span> = {}): Span[] =>
  Array.from({ length: dimensions }, () => ({ from: 0, to: 1, ...more }));
const usual = { senses: [-1] as readonly Sense[], quick: [] as readonly boolean[], budget: 120, width: 12 };
const bestOf = ({ tried }: Found, sense: Sense = -1) =>
  tried.filter(isGood).toSorted((a, b) => sense * (b.aims[0]! - a.aims[0]!))[0];

const bowl =
  (center: readonly number[]): Truth =>
  (at) => ({ aims: [at.reduce((sum, v, k) => sum + (v - center[k]!) ** 2, 0)], excess: [] });

describe('a search with one aim', () => {
  const center = [0.37, 0.81, 0.22, 0.6];
  it.each([1, 2, 3, 4])('finds the bottom of a bowl in %i dimensions', (dimensions) => {
    for (const seed of [1, 2, 3]) {
      const { found } = search({ ...usual, spans: cube(dimensions) }, bowl(center), { seed });
      bestOf(found)!.at.forEach((v, k) => expect(Math.abs(v - center[k]!)).toBeLessThan(0.01));
    }
  });
  it('finds the most where most is wanted, and an optimum on the bounds exactly', () => {
    const slope: Truth = ([x, y, z]) => ({ aims: [2 * x! - y! - (z! - 0.5) ** 2], excess: [] });
    const { found } = search({ ...usual, senses: [1], spans: cube(3) }, slope);
    const [x, y, z] = bestOf(found, 1)!.at;
    expect([x, y]).toEqual([1, 0]);
    expect(Math.abs(z! - 0.5)).toBeLessThan(0.02);
  });
  it('finds one of the three lowest places of Branin’s function, 0.3979, in 120 designs', () => {
    // Dixon and Szegő, Towards Global Optimisation 2, 1978 (from memory).
    const branin: Truth = ([x, y]) => {
      const inner = y! - (5.1 / (4 * Math.PI ** 2)) * x! ** 2 + (5 / Math.PI) * x! - 6;
      return { aims: [inner ** 2 + 10 * (1 - 1 / (8 * Math.PI)) * Math.cos(x!) + 10], excess: [] };
    };
    const spans = [
      { from: -5, to: 10 },
      { from: 0, to: 15 },
    ];
    for (const seed of [1, 2, 3]) {
      const lowest = bestOf(search({ ...usual, spans }, branin, { seed }).found)!.aims[0]!;
      expect(lowest).toBeGreaterThanOrEqual(0.39788);
      expect(lowest).toBeLessThan(0.41);
    }
  });
  it('is not led astray by noise', () => {
    const noisy: Truth = (at) => ({
      aims: [1 + bowl(center)(at).aims[0]! + 0.002 * Math.sin(1e4 * (at[0]! + 3 * at[1]!))],
      excess: [],
    });
    const { at } = bestOf(search({ ...usual, spans: cube(3) }, noisy).found)!;
    at.forEach((v, k) => expect(Math.abs(v - center[k]!)).toBeLessThan(0.08)); // the noise is as much as 0.06 off
  });
  it('goes the same way when a range is written from its upper end', () => {
    const { found } = search(
      {
        ...usual,
        spans: [
          { from: 1, to: 0 },
          { from: 0, to: 1 },
        ],
      },
      bowl(center),
    );
    bestOf(found)!.at.forEach((v, k) => expect(Math.abs(v - center[k]!)).toBeLessThan(0.01));
  });
});

describe('limits', () => {
  const ring: Truth = ([x, y]) => {
    const far = Math.hypot(x! - 0.5, y! - 0.5);
    return { aims: [far], excess: [0.3 - far] };
  };
  it.each([true, false])('that forbid the middle leave the edge of what is allowed (known at once: %s)', (isQuick) => {
    const { found } = search({ ...usual, spans: cube(2), quick: [isQuick] }, ring);
    const { aims } = bestOf(found)!;
    expect(aims[0]).toBeGreaterThanOrEqual(0.3);
    expect(aims[0]).toBeLessThan(0.303);
  });
  it.each([true, false])(
    'that leave a narrow strip are kept to, and the best in it is found (at once: %s)',
    (isQuick) => {
      // The strip takes up 0.6 % of the cube.
      const strip: Truth = ([x, y, z]) => ({ aims: [x! + y! + z!], excess: [x! + y! - 0.3, 0.28 - x! - y!] });
      const { found } = search({ ...usual, senses: [1], spans: cube(3), quick: [isQuick, isQuick] }, strip);
      const { aims, excess } = bestOf(found, 1)!;
      expect(Math.max(...excess)).toBeLessThanOrEqual(0);
      expect(aims[0]).toBeGreaterThan(1.295);
    },
  );
  it('that are known at once cost nothing: no design that breaks one is worked out', () => {
    const { found, asked } = search({ ...usual, spans: cube(2), quick: [true] }, ring);
    expect(asked).toBe(usual.budget);
    expect(found.tried).toHaveLength(usual.budget);
    expect(found.tried.every(({ excess }) => excess[0]! <= 0)).toBe(true);
    expect(found.leftOut.length).toBeGreaterThan(10);
    expect(found.leftOut.every(({ excess }) => excess[0]! > 0)).toBe(true);
  });
  it('that nothing keeps to end the search before anything is worked out', () => {
    const { found, asked, screened } = search({ ...usual, spans: cube(3), quick: [true] }, ([x]) => ({
      aims: [x!],
      excess: [1 + x!],
    }));
    expect(asked).toBe(0);
    expect(found.tried).toEqual([]);
    expect(found.leftOut).toHaveLength(screened);
    expect(screened).toBeLessThan(1000);
  });
});

describe('designs without an answer', () => {
  it('are lived with: the best of the others is found beside them', () => {
    // The lower the better, but under 0.4 there is nothing.
    const cliff: Truth = ([x, y]) => ({ aims: [x! < 0.4 ? NaN : x! + (y! - 0.5) ** 2], excess: [] });
    const { found } = search({ ...usual, spans: cube(2) }, cliff);
    expect(bestOf(found)!.aims[0]).toBeLessThan(0.42);
    expect(found.tried.filter(({ aims }) => Number.isNaN(aims[0])).length).toBeLessThan(70);
  });
  it('alone come to an end as well', () => {
    const { found } = search({ ...usual, budget: 30, spans: cube(2) }, () => ({ aims: [NaN], excess: [Infinity] }));
    expect(found.tried).toHaveLength(30);
    expect(found.tried.filter(isGood)).toEqual([]);
  });
});

describe('a search with two aims', () => {
  it('finds the whole line between two bowls’ bottoms, on which neither gets better without the other', () => {
    const a = [0.2, 0.2];
    const b = [0.7, 0.7];
    const two: Truth = (at) => ({ aims: [...bowl(a)(at).aims, ...bowl(b)(at).aims], excess: [] });
    const { found } = search({ ...usual, senses: [-1, -1], spans: cube(2) }, two);
    const front = frontOf(found.tried.filter(isGood), [-1, -1]);
    const apart = Math.SQRT2 / 2;
    // On the line the two distances add up to the one between the bottoms.
    for (const { aims } of front) expect((Math.sqrt(aims[0]!) + Math.sqrt(aims[1]!)) / apart).toBeLessThan(1.03);
    const places = [0, ...front.map(({ aims }) => Math.sqrt(aims[0]!) / apart).toSorted((p, q) => p - q), 1];
    const gaps = places.slice(1).map((p, i) => p - places[i]!);
    expect(Math.max(...gaps)).toBeLessThan(0.1);
  });
  it('follows the bent front of a published test, in two dimensions and in four', () => {
    // ZDT1: E. Zitzler, K. Deb and L. Thiele, Evolutionary Computation 8 (2000) 173-195: f2 = 1 - sqrt(f1) (from memory).
    for (const dimensions of [2, 4]) {
      const zdt1: Truth = ([x, ...rest]) => {
        const g = 1 + (9 * rest.reduce((sum, v) => sum + v, 0)) / rest.length;
        return { aims: [x!, g * (1 - Math.sqrt(x! / g))], excess: [] };
      };
      const { found } = search({ ...usual, senses: [-1, -1], spans: cube(dimensions) }, zdt1);
      const front = frontOf(found.tried.filter(isGood), [-1, -1]);
      expect(front.length).toBeGreaterThan(25);
      const over = front.map(({ aims }) => aims[1]! - (1 - Math.sqrt(aims[0]!)));
      expect(Math.max(...over)).toBeLessThan(0.03);
      expect(Math.min(...over)).toBeGreaterThan(-1e-12);
    }
  });
});

describe('a search', () => {
  const problem = { ...usual, spans: cube(3), budget: 60, quick: [true] };
  const truth: Truth = (at) => ({ ...bowl([0.3, 0.3, 0.3])(at), excess: [0.2 - at[0]!] });
  it('asked again with the same dice says the same', () => {
    expect(search(problem, truth, { seed: 5 })).toEqual(search(problem, truth, { seed: 5 }));
    expect(search(problem, truth, { seed: 5 })).not.toEqual(search(problem, truth, { seed: 6 }));
  });
  it('stopped anywhere keeps what stands, and that is how the whole one began', () => {
    const whole = search(problem, truth).found;
    const half = search(problem, truth, { until: ({ found }) => found.tried.length >= 24 }).found;
    expect(half.tried).toHaveLength(24);
    expect(half.tried).toEqual(whole.tried.slice(0, 24));
    expect(bestOf(half)).toBeDefined();
  });
  it('tries the present setting first, as it is, even off the grid', () => {
    const { found } = search(
      { ...problem, quick: [], start: [0.123, 0.5, 0.5], spans: cube(3, { snap: (v) => Math.round(v * 10) / 10 }) },
      bowl([0.3, 0.3, 0.3]),
    );
    expect(found.tried[0]!.at).toEqual([0.123, 0.5, 0.5]);
    expect(found.tried.slice(1).every(({ at }) => at.every((v) => Math.abs(v * 10 - Math.round(v * 10)) < 1e-9))).toBe(
      true,
    );
  });
  it('leaves no range, though its ends lie off the grid', () => {
    const span: Span = { from: 0.37, to: 0.96, snap: (v) => Math.round(v * 10) / 10 };
    const { found } = search({ ...usual, senses: [1], spans: [span, ...cube(1)] }, ([x, y]) => ({
      aims: [x! - (y! - 0.5) ** 2],
      excess: [],
    }));
    const xs = found.tried.map(({ at }) => at[0]!);
    expect(Math.min(...xs)).toBeGreaterThanOrEqual(0.37);
    expect(Math.max(...xs)).toBe(0.96);
    expect(bestOf(found, 1)!.at[0]).toBe(0.96);
  });
  it('tries nothing twice, and ends when all there is has been tried', () => {
    const { found } = search(
      {
        ...usual,
        spans: [
          { from: 4, to: 8, snap: Math.round },
          { from: 1, to: 2, snap: Math.round },
        ],
      },
      ([x, y]) => ({ aims: [Math.abs(x! - 6) + y!], excess: [] }),
    );
    expect(new Set(found.tried.map(({ at }) => at.join())).size).toBe(10);
    expect(found.tried).toHaveLength(10);
    expect(bestOf(found)!.at).toEqual([6, 1]);
  });
  it('works out exactly as many designs as it may, never more at once than it is told', () => {
    const sizes: number[] = [];
    const { asked } = search({ ...usual, spans: cube(2), budget: 31, width: 7 }, bowl([0.5, 0.5]), {
      until: ({ of, designs }) => (of === 'all' && sizes.push(designs.length), false),
    });
    expect(asked).toBe(31);
    expect(Math.max(...sizes)).toBe(7);
  });
});
