import { errorFunction, quantileSorted } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { type Cell, cell, drain, type Input, slow, type Steps } from '../../src/graph/cell.ts';
import { type DrawsAsk, type DrawsResult, drawSteps, perSigma } from '../../src/graph/draws.ts';
import { type Verdict, verdict, wordAt } from '../../src/graph/kind.ts';
import { Live } from '../../src/graph/live.ts';
import { NotSettled, snapshot } from '../../src/graph/snapshot.ts';
import { spreads } from '../../src/graph/spread.ts';
import { Impossible, needed } from '../../src/graph/state.ts';
import { ratio } from '../../src/units/quantity.ts';
import { degree } from '../../src/units/unit.ts';
import { byHand } from '../e2e/by-hand.ts';
import { catalogue, cellOf, example, inputOf, opened } from '../notebook/notebooks.ts';
import { toy, typed } from './toy.ts';

const seen = (...cells: Cell[]): Live => {
  const live = new Live(cells);
  live.look(cells);
  live.run();
  return live;
};
type Within = readonly (readonly [Cell, number])[];
const drawn = (live: Live, reads: readonly Cell[], within: Within, more: Partial<DrawsAsk> = {}): DrawsResult =>
  drain(drawSteps(snapshot(live), { tolerances: new Map(within), reads, count: 10_000, seed: 1, ...more }));
const mean = (xs: ArrayLike<number>): number => Array.from(xs).reduce((sum, x) => sum + x, 0) / xs.length;
const deviation = (xs: ArrayLike<number>): number => {
  const m = mean(xs);
  return Math.sqrt(mean(Array.from(xs, (x) => (x - m) ** 2)));
};
const place = (xs: ArrayLike<number>, share: number): number =>
  quantileSorted(
    Array.from(xs).toSorted((a, b) => a - b),
    share,
  );

const a = typed('a', 4);
const b = typed('b', -2);
const c = typed('c', 7);
const line = cell({ ...toy('line'), from: { a, b, c }, compute: ({ a, b, c }) => 3 * a - 2 * b + c });
const product = cell({ ...toy('product'), from: { a, b }, compute: ({ a, b }) => a * b });

// Places of the normal distribution, in its deviations: Abramowitz and Stegun, table 26.5 (from memory).
const [z95, z975] = [1.644854, 1.959964];
/** The share of a normal distribution under a place in deviations; the error function is another package's. */
const normalUnder = (z: number): number => (1 + errorFunction(z / Math.SQRT2)) / 2;
// Standard errors of what is drawn: of a mean sigma / sqrt(n), of a deviation sigma / sqrt(2 n), of a place at share p
// sqrt(p (1 - p) / n) over the density there (from memory). Four of them are enough for any seed worth having.
const errors = 4;
const n = 10_000;
const errorOfPlace = (sigma: number): number => (Math.sqrt((0.05 * 0.95) / n) / 0.103136) * sigma;

describe('draws within tolerances', () => {
  it('hold 19 of 20 of each cell within its ±', () => {
    const [{ samples }] = drawn(seen(a), [a], [[a, 0.5]]) as [DrawsResult[number]];
    const within = samples.filter((x) => Math.abs(x - 4) <= 0.5).length / n;
    expect(Math.abs(within - 0.95)).toBeLessThan(errors * Math.sqrt((0.95 * 0.05) / n));
    expect(perSigma).toBeCloseTo(z975, 6);
  });

  it('of a straight line have its mean, its deviation and its places at 5 and 95 %', () => {
    const within: Within = [
      [a, 0.1],
      [b, 0.2],
      [c, 0.5],
    ];
    const [{ samples, here }] = drawn(seen(line), [line], within) as [DrawsResult[number]];
    const sigma = Math.sqrt(0.3 ** 2 + 0.4 ** 2 + 0.5 ** 2) / z975;
    expect(here).toBe(23);
    expect(samples).toHaveLength(n);
    expect(Math.abs(mean(samples) - 23)).toBeLessThan((errors * sigma) / Math.sqrt(n));
    expect(Math.abs(deviation(samples) - sigma)).toBeLessThan((errors * sigma) / Math.sqrt(2 * n));
    expect(Math.abs(place(samples, 0.05) - (23 - z95 * sigma))).toBeLessThan(errors * errorOfPlace(sigma));
    expect(Math.abs(place(samples, 0.95) - (23 + z95 * sigma))).toBeLessThan(errors * errorOfPlace(sigma));
  });

  it('of a product have the variance of a product of independent normal figures', () => {
    // var(ab) = a² s_b² + b² s_a² + s_a² s_b²: Goodman, J. Am. Stat. Assoc. 55 (1960), eq. 2 (from memory).
    const [sa, sb] = [2 / z975, 1.5 / z975];
    const within: Within = [
      [a, 2],
      [b, 1.5],
    ];
    const [{ samples }] = drawn(seen(product), [product], within) as [DrawsResult[number]];
    const sigma = Math.sqrt(16 * sb ** 2 + 4 * sa ** 2 + sa ** 2 * sb ** 2);
    expect(Math.abs(mean(samples) + 8)).toBeLessThan((errors * sigma) / Math.sqrt(n));
    // A product's tails are longer than a bell's, and its deviation that much less sure.
    expect(Math.abs(deviation(samples) / sigma - 1)).toBeLessThan((2 * errors) / Math.sqrt(2 * n));
  });

  it('of the dynamic ratio have the places that the README’s way of working it out gives over both bells', () => {
    const store = opened(example);
    const [chamber, duration] = [6e-6, 12 * degree.factor]; // wide, so that the curve of it counts
    const within: Within = [
      [cellOf('chamberVolume'), chamber],
      [cellOf('intakeDuration'), duration],
    ];
    const [{ samples }] = drawn(store.live, [cellOf('dynamicRatio')], within) as [DrawsResult[number]];
    const steps = 301;
    const at = Array.from({ length: steps }, (_, i) => -5 + (10 * (i + 0.5)) / steps);
    const grid = at.flatMap((u) =>
      at.map((v) => ({
        // A later closing by half of what the duration grows.
        value: byHand({ chamber: 70 + (u * 6) / z975, closing: 61 + (v * 12) / z975 / 2 }).dynamicRatio,
        weight: Math.exp(-(u ** 2 + v ** 2) / 2),
      })),
    );
    grid.sort((p, q) => p.value - q.value);
    const whole = grid.reduce((sum, p) => sum + p.weight, 0);
    const placed = (share: number): number => {
      let sum = 0;
      return grid.find((p) => (sum += p.weight / whole) >= share)!.value;
    };
    const sigma = (placed(0.95) - placed(0.05)) / (2 * z95);
    for (const share of [0.05, 0.5, 0.95])
      expect(Math.abs(place(samples, share) - placed(share))).toBeLessThan(errors * errorOfPlace(sigma));
    expect(placed(0.95) + placed(0.05) - 2 * placed(0.5)).toBeGreaterThan(errors * errorOfPlace(sigma)); // it is bent
  });

  it('agree for small tolerances with the ± of first order: it holds 95 of 100 too', () => {
    const { live } = opened(example);
    const within: Within = ['bore', 'chamberVolume', 'gasketThickness', 'intakeCenterline'].map((id) => {
      const state = live.state(cellOf(id));
      return [cellOf(id), (state as { readonly value: number }).value * 2e-4];
    });
    for (const id of ['clearanceVolume', 'staticRatio', 'dynamicRatio', 'crankingPressure']) {
      const read = cellOf(id);
      const { plusMinus } = spreads(snapshot(live), [read], new Map(within)).get(read)!;
      const [{ samples }] = drawn(live, [read], within) as [DrawsResult[number]];
      const half = (place(samples, 0.975) - place(samples, 0.025)) / 2;
      // One standard error of a place at 2.5 % is 0.027 of a deviation, of half the difference of two 0.019.
      expect(Math.abs(half / plusMinus - 1)).toBeLessThan((errors * 0.019) / z975);
    }
  });

  it('are the same for the same seed, whatever else is asked for or was before, and others for another', () => {
    const live = seen(line, product);
    const within: Within = [
      [a, 0.1],
      [b, 0.2],
    ];
    const [alone] = drawn(live, [line], within, { count: 500 }) as [DrawsResult[number]];
    drawn(live, [product], [[b, 1]], { seed: 9 });
    const [, together] = drawn(live, [product, line], [...within, [c, 0]], { count: 500 }) as DrawsResult & [unknown];
    expect(together).toEqual(alone);
    const [less] = drawn(live, [line], [[a, 0.1]], { count: 500 }) as [DrawsResult[number]];
    const [other] = drawn(live, [line], [[b, 0.2]], { count: 500 }) as [DrawsResult[number]];
    // What one cell is drawn as does not depend on what else is drawn.
    alone.samples.forEach((x, i) => expect(x - 23).toBeCloseTo(less.samples[i]! - 23 + other.samples[i]! - 23, 12));
    expect(drawn(live, [line], within, { count: 500, seed: 2 })[0]!.samples[0]).not.toBe(alone.samples[0]);
  });

  it('go on where they ended', () => {
    const live = seen(line);
    const [whole] = drawn(live, [line], [[a, 1]], { count: 300 }) as [DrawsResult[number]];
    const [first] = drawn(live, [line], [[a, 1]], { count: 120 }) as [DrawsResult[number]];
    const [rest] = drawn(live, [line], [[a, 1]], { from: 120, count: 180 }) as [DrawsResult[number]];
    expect([...first.samples, ...rest.samples]).toEqual([...whole.samples]);
  });

  it('of any two figures that can be typed do not lean on one another', () => {
    const inputs = [...catalogue.cells.values()].filter(
      (i): i is Input<number> => i.role === 'input' && i.kind.name === 'scalar',
    );
    const live = seen(...inputs);
    const within: Within = inputs.map((i) => [i, Math.abs(i.initial) * 1e-4 || 1e-4]);
    const standard = drawn(live, inputs, within, { count: 2000 }).map(({ samples }) => {
      const [m, s] = [mean(samples), deviation(samples)];
      return samples.map((x) => (x - m) / s);
    });
    let most = 0;
    let pairs = 0;
    for (let i = 0; i < standard.length; i++)
      for (let j = 0; j < i; j++) {
        pairs++;
        most = Math.max(most, Math.abs(standard[i]!.reduce((sum, x, k) => sum + x * standard[j]![k]!, 0) / 2000));
      }
    expect(pairs).toBeGreaterThan(1000);
    // Of some thousand independent pairs the farthest lies near four deviations of 1 / sqrt(2000).
    expect(most).toBeLessThan(5.5 / Math.sqrt(2000));
  });

  it('take a held cell with its own ±, and leave alone what it hides', () => {
    const half = cell({ ...toy('half'), from: { a }, compute: ({ a }) => a / 2 });
    const sum = cell({ ...toy('sum'), from: { half, b }, compute: ({ half, b }) => 10 * half + b });
    const live = seen(sum);
    live.hold(half, 5);
    live.run();
    const [{ samples }] = drawn(
      live,
      [sum],
      [
        [half, 0.3],
        [a, 100],
      ],
    ) as [DrawsResult[number]];
    expect(Math.abs(deviation(samples) - 3 / z975)).toBeLessThan((errors * 3) / z975 / Math.sqrt(2 * n));
  });

  it('are all the same where nothing is uncertain', () => {
    const [{ samples }] = drawn(seen(line), [line], [[typed('elsewhere', 1), 1]], { count: 50 }) as [
      DrawsResult[number],
    ];
    expect([...samples]).toEqual(Array.from({ length: 50 }, () => 23));
  });

  it.each([1, 31, 32, 33, 64])('take any number of cells: %s', (cells) => {
    const many = Array.from({ length: cells }, (_, i) => typed(`many${i}`, i));
    const sum = cell({
      ...toy('sum'),
      from: Object.fromEntries(many.map((m) => [m.id, m])),
      compute: (given) => Object.values(given).reduce((total, x) => total + x, 0),
    });
    const within: Within = many.map((m) => [m, 1]);
    const [{ samples, here }] = drawn(seen(sum), [sum], within, { count: 2000 }) as [DrawsResult[number]];
    const [sigma, middle] = [Math.sqrt(cells) / z975, (cells * (cells - 1)) / 2];
    expect(here).toBe(middle);
    expect(Math.abs(mean(samples) - middle)).toBeLessThan((errors * sigma) / Math.sqrt(2000));
    expect(Math.abs(deviation(samples) - sigma)).toBeLessThan((errors * sigma) / Math.sqrt(4000));
  });

  it('leave live values alone, and throw at once where something has no value', () => {
    const live = seen(line);
    drawn(live, [line], [[a, 1]], { count: 10 });
    expect(live.run()).toEqual([]);
    expect(live.state(line)).toEqual({ is: 'ready', value: 23 });
    live.fail(b, { at: 'b', about: 'b', message: ['Write a figure.'] });
    live.run();
    expect(() => drawn(live, [line], [[a, 1]])).toThrow(NotSettled);
  });
});

describe('a bell that physics cuts', () => {
  // The mean of a normal distribution cut at both ends: Johnson, Kotz and Balakrishnan, Continuous Univariate
  // Distributions, vol. 1, 1994, sec. 10.1 (from memory).
  const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  const meanOfCut = (mu: number, sigma: number, [low, high]: readonly [number, number]): number => {
    const [p, q] = [(low - mu) / sigma, (high - mu) / sigma];
    return mu + (sigma * (density(p) - density(q))) / (normalUnder(q) - normalUnder(p));
  };
  it.each([
    ['at its own middle', 10, 2, [0, 10]],
    ['on one side', 9, 3, [0, 10]],
    ['to a sliver of it', 9, 300, [0, 10]],
    ['to a part of it', 2, 15, [0, 10]],
    ['to little more than a flank', 0, 21, [0, 10]],
    ['to a little less', 0, 19, [0, 10]],
  ] as const)('%s keeps within its ends, and has the mean of what is left', (_, value, tolerance, hard) => {
    const edge = typed('edge', value, { hard });
    const [{ samples }] = drawn(seen(edge), [edge], [[edge, tolerance]]) as [DrawsResult[number]];
    expect(samples.every((x) => x >= 0 && x <= 10)).toBe(true);
    const wanted = meanOfCut(value, tolerance / z975, hard);
    expect(Math.abs(mean(samples) - wanted)).toBeLessThan((errors * deviation(samples)) / Math.sqrt(n) + 1e-3);
  });
  it('is drawn from in no time, however wide its ±', () => {
    const edge = typed('edge', 0.5, { hard: [0, 1] });
    const [{ samples }] = drawn(seen(edge), [edge], [[edge, 1e300]], { count: 100 }) as [DrawsResult[number]];
    expect(samples.every((x) => x >= 0 && x <= 1)).toBe(true);
    expect(new Set(samples).size).toBe(100);
  });
});

describe('a draw without an answer', () => {
  const root = cell({
    ...toy('root'),
    from: { a },
    compute: ({ a }) => {
      if (a < 4) throw new Impossible(['It is under four.'], 'a');
      return Math.sqrt(a - 4);
    },
  });
  it('is counted, and the first says why', () => {
    const [found, other] = drawn(seen(root, line), [root, line], [[a, 1]]) as [
      DrawsResult[number],
      DrawsResult[number],
    ];
    const none = found.samples.filter(Number.isNaN).length;
    expect(Math.abs(none / n - 0.5)).toBeLessThan(errors * Math.sqrt(0.25 / n));
    expect(found.why).toEqual(['It is under four.']);
    expect(other.samples.some(Number.isNaN)).toBe(false);
    expect(other.why).toBeNull();
  });
  it('leaves no trace in the next', () => {
    const [found] = drawn(seen(root), [root], [[a, 1]]) as [DrawsResult[number]];
    const [inputs] = drawn(seen(a), [a], [[a, 1]]) as [DrawsResult[number]];
    inputs.samples.forEach((x, i) => expect(found.samples[i]).toBe(x < 4 ? NaN : Math.sqrt(x - 4)));
  });
});

describe('a verdict that is drawn', () => {
  const kind = verdict(ratio, [
    { id: 'fine', label: 'fine', tone: 'comfortable' },
    { id: 'near', label: 'near', tone: 'borderline' },
    { id: 'over', label: 'over', tone: 'beyond' },
  ]);
  const judged = cell({
    ...toy('judged'),
    kind,
    from: { a },
    compute: ({ a }): Verdict => {
      const edges = [7.5, 9.5];
      return { word: wordAt(kind, 2 * a, edges), value: 2 * a, edges, lead: [], place: [], advice: [] };
    },
  });
  it('has for each word the chance that the bell has between its edges, and no more than one in all', () => {
    const [{ words, samples, here }] = drawn(seen(judged), [judged], [[a, 1]]) as [DrawsResult[number]];
    const sigma = 2 / z975;
    const under = (x: number): number => normalUnder((x - 8) / sigma);
    const wanted = { fine: under(7.5), near: under(9.5) - under(7.5), over: 1 - under(9.5) };
    expect(Object.values(words).reduce((sum, times) => sum + times, 0)).toBe(n);
    for (const [word, p] of Object.entries(wanted))
      expect(Math.abs(words[word]! / n - p)).toBeLessThan(errors * Math.sqrt((p * (1 - p)) / n) + 1e-4);
    expect(here).toBe(8);
    expect(words['over']).toBe(samples.filter((x) => x > 9.5).length);
  });
  it('of the fuel is what its own edges make of the ratio drawn beside it', () => {
    const { live } = opened(example);
    const within: Within = [
      [cellOf('chamberVolume'), 4e-6],
      [cellOf('cautionStart'), 0.2],
    ];
    const reads = ['dynamicRatio', 'cautionStartHere', 'cautionEndHere', 'fuelVerdict'].map(cellOf);
    live.hold(cellOf('cautionStart'), 7.6);
    live.run();
    const [value, start, end, judge] = drawn(live, reads, within, { count: 2000 }) as DrawsResult &
      DrawsResult[number][];
    const words = { comfortable: 0, borderline: 0, beyond: 0 };
    value!.samples.forEach((x, i) => {
      const [from, to] = [start!.samples[i]!, end!.samples[i]!];
      words[x < from ? 'comfortable' : x > to ? 'beyond' : 'borderline']++;
    });
    expect(judge!.words).toEqual(Object.fromEntries(Object.entries(words).filter(([, times]) => times > 0)));
    expect(Object.keys(judge!.words).length).toBeGreaterThan(1);
    expect([...judge!.samples]).toEqual([...value!.samples]);
  });
});

describe('what a reader may do without', () => {
  let fits = 0;
  const fitted = cell({
    ...toy('fitted'),
    from: { a },
    compute: ({ a }) => {
      fits++;
      return 10 * a;
    },
  });
  const result = cell({
    ...toy('result'),
    from: { a, b, fitted },
    mayLack: ['fitted'],
    compute: ({ a, b, fitted }) => (b < 0 ? a : a + needed(fitted)),
  });
  it('is left out of the draws where it is not needed', () => {
    const live = seen(result);
    fits = 0;
    const [found] = drawn(live, [result], [[a, 1]]) as [DrawsResult[number]];
    expect(fits).toBeLessThan(20);
    expect([...found.samples]).toEqual([...drawn(seen(a), [a], [[a, 1]])[0]!.samples]);
  });
  it('is worked out where it is needed, from the first draw or from a later one on', () => {
    for (const [at, within] of [
      [1, 0.1],
      [-0.9, 1],
    ] as const) {
      const live = seen(result, fitted);
      live.set(b, at);
      live.run();
      const [found, as, bs] = drawn(
        live,
        [result, a, b],
        [
          [a, 1],
          [b, within],
        ],
        { count: 2000 },
      ) as DrawsResult & DrawsResult[number][];
      const wanted = as!.samples.map((x, i) => (bs!.samples[i]! < 0 ? x : 11 * x));
      found!.samples.forEach((x, i) => expect(x).toBeCloseTo(wanted[i]!, 12));
      expect(bs!.samples.some((x) => x >= 0)).toBe(true);
    }
  });
  it('is not left out of a cell that would come to something else', () => {
    const guesses = cell({
      ...toy('guesses'),
      from: { a, fitted },
      mayLack: ['fitted'],
      compute: ({ a, fitted }) => fitted ?? a,
    });
    const [found] = drawn(seen(guesses), [guesses], [[a, 1]], { count: 100 }) as [DrawsResult[number]];
    const [as] = drawn(seen(a), [a], [[a, 1]], { count: 100 }) as [DrawsResult[number]];
    expect([...found.samples]).toEqual(Array.from(as.samples, (x) => 10 * x));
  });
  it('changes nothing about an engine, hydraulic or solid', () => {
    const store = opened(example);
    const within: Within = ['intakeDuration', 'chamberVolume', 'intakeLash'].map((id) => [cellOf(id), 1e-6]);
    for (const tappet of ['hydraulic', 'solid']) {
      store.set(
        [
          [inputOf('tappet'), tappet],
          [inputOf('intakeLash'), 0.0005],
        ],
        { what: 'tappet' },
      );
      const [closing, lobe] = ['intakeClosing', 'intakeLobe'].map(cellOf) as [Cell, Cell];
      const alone = drawn(store.live, [closing], within, { count: 60 })[0]!;
      const withLobe = drawn(store.live, [closing, lobe], within, { count: 60 })[0]!; // then the lobe is never left out
      expect([...alone.samples]).toEqual([...withLobe.samples]);
      expect(new Set(alone.samples).size).toBe(60);
    }
  });
});

describe('slow draws', () => {
  let worked: number[] = [];
  const work = slow({
    ...toy('work'),
    from: { a },
    *steps({ a }) {
      yield 0.5;
      return a;
    },
    rough: ({ a }) => {
      worked.push(a);
      return a + 0.25;
    },
  });
  const after = cell({ ...toy('after'), from: { work, b }, compute: ({ work, b }) => work + b });
  const steps = (more: Partial<DrawsAsk>): Steps<DrawsResult> =>
    drawSteps(snapshot(seen(after)), { tolerances: new Map([[a, 1]]), reads: [after], count: 5, seed: 1, ...more });

  it('are coarse, tell after each what stands, and what they come to where nothing is moved', () => {
    worked = [];
    const heard = [...steps({})].filter((step) => typeof step !== 'number');
    expect(heard.map(({ done }) => done)).toEqual([0.2, 0.4, 0.6, 0.8, 1]);
    expect(heard.map(({ value }) => value[0]!.samples.length)).toEqual([1, 2, 3, 4, 5]);
    expect(worked).toHaveLength(6);
    const found = drain(steps({}))[0]!;
    expect(found.here).toBe(4 + 0.25 - 2);
    expect(heard.at(-1)!.value[0]).toEqual(found);
    expect([...found.samples]).toEqual(worked.slice(1, 6).map((x) => x + 0.25 - 2));
  });
  it('end with the time they are given, after one at least, and tell how much of it is gone', () => {
    const none = [...steps({ seconds: 1e-9, count: 1000 })].filter((step) => typeof step !== 'number');
    expect(none.map(({ value, done }) => [value[0]!.samples.length, done])).toEqual([[1, 1]]);
    const shares: number[] = [];
    const began = performance.now();
    for (const step of steps({ seconds: 0.05, count: 1e6 })) if (typeof step !== 'number') shares.push(step.done);
    const took = performance.now() - began;
    expect(took).toBeGreaterThan(49);
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual(shares.toSorted((p, q) => p - q));
    expect(shares.length).toBeGreaterThan(1);
  });
});
