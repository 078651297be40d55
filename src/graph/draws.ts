import { randomLcg, randomNormal } from 'd3-random';
import type { Phrase } from '../units/phrase.ts';
import type { Cell, Steps } from './cell.ts';
import { Draw } from './draw.ts';
import type { Verdict } from './kind.ts';
import { numeric } from './numeric.ts';
import type { Probe } from './probe.ts';
import type { Snapshot } from './snapshot.ts';
import { Impossible } from './state.ts';
import { bearingOn, type Toleranced } from './toleranced.ts';

export interface DrawsAsk {
  /** ± by cell, SI. */
  readonly tolerances: ReadonlyMap<Cell, number>;
  readonly reads: readonly Cell[];
  /** The first draw to be made, counted from 0: what was drawn before is not drawn again. */
  readonly from?: number;
  /** How many draws, at most. */
  readonly count: number;
  /** s; no draw begins after them. */
  readonly seconds?: number;
  /** Whole; the same seed makes the same draws. */
  readonly seed: number;
}
/** What one result came to. */
export interface Drawn {
  /** Its figure, SI, where everything stands as it is written; NaN if there is none. */
  readonly here: number;
  /** In the order of the draws, SI; NaN where a draw has no answer. */
  readonly samples: Float64Array;
  /** How often a verdict came to each of its words. */
  readonly words: Readonly<Record<string, number>>;
  /** Why there was no answer when there was none first. */
  readonly why: Phrase | null;
}
/** In the order of what was asked for. */
export type DrawsResult = readonly Drawn[];

/**
 * How many standard deviations a ± stands for: it holds 19 values of 20, as a stated uncertainty usually does, so that
 * the ± of a straight line's result (`spread.ts`) again holds 19 of 20. JCGM 100:2008 (GUM), annex G; that a figure of
 * which no more is known than value and uncertainty is drawn from a normal distribution: JCGM 101:2008, 6.4.7 (both
 * from memory).
 */
export const perSigma = 1.959964;

const slice = 32; // quick draws between two looks at the clock

/**
 * Draws every toleranced cell that the results stand on, all at once and independently, and reads the results: each
 * draw runs the whole path. Yields the share done, and after each draw of a slow path what stands so far. Throws
 * NotSettled at once if it has to wait.
 */
export function* drawSteps(at: Snapshot, ask: DrawsAsk): Steps<DrawsResult> {
  const { reads, from = 0, count, seconds = Infinity, seed } = ask;
  const began = performance.now();
  const varied = bearingOn(at, reads, ask.tolerances);
  const draw = new Draw(
    at,
    varied.map((v) => v.cell),
    reads,
  );
  const sources = varied.map((v) => stream(v, seed));
  for (let i = 0; i < from; i++) for (const source of sources) source();

  const tallies = reads.map(() => new Tally(count));
  const here = draw.run([]);
  tallies.forEach((tally, j) => (tally.here = numeric(here.tryGet(j))));
  yield 0;
  const values = varied.map((v) => v.value);
  const passed = (): number => (performance.now() - began) / 1000 / seconds;
  for (let n = 0; n < count;) {
    for (let k = 0; k < sources.length; k++) values[k] = sources[k]!();
    const found = draw.run(values);
    for (let j = 0; j < tallies.length; j++) tallies[j]!.take(found, j);
    n++;
    if (!draw.isSlow && n % slice !== 0) continue;
    const time = passed();
    const done = Math.min(1, Math.max(n / count, time));
    yield draw.isSlow ? { value: tallies.map((tally) => tally.result()), done } : done;
    if (time >= 1) break;
  }
  return tallies.map((tally) => tally.result());
}

/** One result, draw by draw. */
class Tally {
  here = NaN;
  private readonly samples: Float64Array;
  private readonly words: Record<string, number> = {};
  private why: Phrase | null = null;
  private drawn = 0;

  constructor(count: number) {
    this.samples = new Float64Array(count);
  }
  take(probe: Probe, j: number): void {
    const value = probe.tryGet(j);
    this.samples[this.drawn++] = numeric(value);
    if (value === undefined) this.why ??= whyNot(probe, j);
    else if (typeof value === 'object' && value !== null && 'word' in value) {
      const { word } = value as Verdict;
      this.words[word] = (this.words[word] ?? 0) + 1;
    }
  }
  result(): Drawn {
    return { here: this.here, samples: this.samples.slice(0, this.drawn), words: { ...this.words }, why: this.why };
  }
}

function whyNot(probe: Probe, j: number): Phrase | null {
  try {
    probe.get(j);
    return null;
  } catch (error) {
    return error instanceof Impossible ? error.phrase : null;
  }
}

/**
 * The draws of one cell, from a source of its own: they are the same whatever else is drawn. Cut at what physics allows
 * by drawing again. A range that is short against the standard deviation is drawn from evenly, and a draw kept as often
 * as the bell stands high there: the same cut bell, without the wait.
 */
function stream({ cell, value, tolerance }: Toleranced, seed: number): () => number {
  const source = randomLcg(hash(`${seed} ${cell.id}`));
  const sigma = tolerance / perSigma;
  const [low, high] = (cell.role === 'input' && cell.hard) || [-Infinity, Infinity];
  const normal = randomNormal.source(source)(value, sigma);
  const even = (): number => {
    for (;;) {
      const x = low + (high - low) * source();
      if (source() < Math.exp(-(((x - value) / sigma) ** 2) / 2)) return x;
    }
  };
  const cut = (): number => {
    for (;;) {
      const x = normal();
      if (x >= low && x <= high) return x;
    }
  };
  return high - low < sigma ? even : cut;
}

/** A figure from 0 to 1 made of words: FNV-1a, 32 bits, its bits stirred once more as MurmurHash3 ends (both from memory). */
function hash(words: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < words.length; i++) h = Math.imul(h ^ words.charCodeAt(i), 0x01000193);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return ((h ^ (h >>> 16)) >>> 0) / 2 ** 32;
}
