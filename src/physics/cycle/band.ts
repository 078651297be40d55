import { type StatedRange, statedRanges } from './ranges.ts';

/** What the ends of the stated ranges do to the torque of an engine at a speed, one by one. */
export interface RangeEffects {
  /** rad/s */
  readonly speed: number;
  /** N m, of the engine as it is. */
  readonly torque: number;
  /** N m more or less with each range at its low end, in the order of `statedRanges`. */
  readonly atLow: readonly number[];
  /** The same at its high end. */
  readonly atHigh: readonly number[];
}

/** How far a torque may be from what is computed, N m, both 0 or more: two engines in three lie inside. */
export interface Band {
  readonly below: number;
  readonly above: number;
}

/**
 * The band of a torque. Each range is taken as a standard normal number of steps, torque as following them by the form of
 * the range, and what the ranges do as adding up. Mean, variance and skewness add up then; the band is that of a bell
 * curve each way with the sum's 5 and 95 %. Falls and rises added up for themselves, root of the sum of squares, come out
 * a third too narrow below and a quarter too wide above, as the ranges cost more at one end than they bring at the other.
 *
 * @param effects of the ranges on one engine at one speed
 * Sources: R. Barlow, arXiv:physics/0306138, 2003 (asymmetric errors; from memory); E. A. Cornish and R. A. Fisher, Revue
 * de l'Institut International de Statistique 5 (1938) 307-320 (from memory).
 */
export function bandOf(effects: RangeEffects): Band {
  return combined(effects.atLow, effects.atHigh);
}

/**
 * How far apart two engines are at a speed, N m, and the band of that: a range shifts both at once, so that much of
 * what each may be wrong by drops out of the difference.
 *
 * @param a the engine to compare with
 * @param b the other
 * @returns b less a
 */
export function differenceBand(a: RangeEffects, b: RangeEffects): Band & { readonly difference: number } {
  const less = (of: readonly number[], by: readonly number[]): number[] => of.map((each, k) => each - by[k]!);
  return { difference: b.torque - a.torque, ...combined(less(b.atLow, a.atLow), less(b.atHigh, a.atHigh)) };
}

/**
 * Half of what a range may change the torque by, N m.
 *
 * @param effects of the ranges on one engine at one speed
 * @param k which range, from 0 in the order of `statedRanges`
 * @throws RangeError when there is no such range
 */
export function shareOf(effects: RangeEffects, k: number): number {
  const [low, high] = [effects.atLow[k], effects.atHigh[k]];
  if (low === undefined || high === undefined) throw new RangeError('There is no such range.');
  return (Math.max(low, high, 0) - Math.min(low, high, 0)) / 2;
}

const edge = 1.645; // of a bell curve: 5 and 95 %

function combined(atLow: readonly number[], atHigh: readonly number[]): Band {
  let [mean, variance, third] = [0, 0, 0];
  for (const [k, { form }] of statedRanges.entries()) {
    const cumulants = cumulantsOf[form](atLow[k]!, atHigh[k]!);
    mean += cumulants[0];
    variance += cumulants[1];
    third += cumulants[2];
  }
  if (!(variance > 0)) return { below: variance, above: variance }; // nothing, or not a number
  const skew = ((edge ** 2 - 1) * third) / (6 * variance); // N m, Cornish and Fisher's first term
  const spread = edge * Math.sqrt(variance);
  return {
    below: Math.max(0, (spread - mean - skew) / edge),
    above: Math.max(0, (spread + mean + skew) / edge),
  };
}

/** Mean, variance and third central moment of a change that is so at one step down and so at one step up. */
const cumulantsOf: Readonly<
  Record<StatedRange['form'], (low: number, high: number) => readonly [number, number, number]>
> = {
  /** a x + b x2 */
  curve: (low, high) => {
    const [a, b] = [(high - low) / 2, (high + low) / 2];
    return [b, a * a + 2 * b * b, 6 * a * a * b + 8 * b ** 3];
  },
  /** -low x below nothing, high x above */
  halves: (low, high) => {
    const mean = (low + high) / Math.sqrt(2 * Math.PI);
    const square = (low ** 2 + high ** 2) / 2;
    const cube = (2 * (low ** 3 + high ** 3)) / Math.sqrt(2 * Math.PI);
    return [mean, square - mean ** 2, cube - 3 * mean * square + 2 * mean ** 3];
  },
  /** high |x| */
  oneSided: (_, high) => {
    const share = Math.sqrt(2 / Math.PI);
    return [share * high, (1 - share ** 2) * high ** 2, share * (2 * share ** 2 - 1) * high ** 3];
  },
};
