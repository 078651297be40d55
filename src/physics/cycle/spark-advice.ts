import type { SparkTrial } from './spark-trial.ts';

/**
 * Torque with a spark, between the trials, N m; held at their ends.
 *
 * @param trials with rising advance, one or more
 * @param advance rad before firing top dead center
 * @throws RangeError when there are no trials
 */
export function torqueWith(trials: readonly SparkTrial[], advance: number): number {
  return between(trials, 'torque', advance);
}

/** The same of the octane number that would be required. */
export function octaneWith(trials: readonly SparkTrial[], advance: number): number {
  return between(trials, 'octane', advance);
}

/**
 * The most advance, rad before firing top dead center, that a fuel bears.
 *
 * @param trials with rising advance, one or more
 * @param octane number of the fuel
 * @returns the last trial's advance where the fuel bears them all, null where it does not even bear the first
 * @throws RangeError when there are no trials
 */
export function knockLimitedSpark(trials: readonly SparkTrial[], octane: number): number | null {
  const last = trials.length - 1;
  if (octaneWith(trials, trials[last]?.advance ?? 0) <= octane) return trials[last]!.advance;
  let at = last;
  while (at >= 0 && !(trials[at]!.octane <= octane)) at--;
  if (at < 0) return null;
  let [low, high] = [trials[at]!.advance, trials[at + 1]!.advance];
  for (let turn = 0; turn < 40; turn++) {
    const middle = (low + high) / 2;
    if (octaneWith(trials, middle) <= octane) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * The spark to run: the best, or less where the fuel does not bear that.
 *
 * @param trials with rising advance, one or more
 * @param bestSpark rad before firing top dead center
 * @param octane number of the fuel
 * @returns rad; null where the fuel does not even bear the least of the trials
 * @throws RangeError when there are no trials
 */
export function suggestedSpark(trials: readonly SparkTrial[], bestSpark: number, octane: number): number | null {
  const limit = knockLimitedSpark(trials, octane);
  return limit === null ? null : Math.min(bestSpark, limit);
}

/** A cubic through both neighbors, at each of them with the slope of the parabola through it and its own neighbors. */
function between(trials: readonly SparkTrial[], key: 'torque' | 'octane', advance: number): number {
  const last = trials.length - 1;
  if (last < 0) throw new RangeError('There are no trials to read from.');
  if (!(advance > trials[0]!.advance)) return trials[0]![key];
  if (advance >= trials[last]!.advance) return trials[last]![key];
  let at = 0;
  while (trials[at + 1]!.advance <= advance) at++;
  const [from, to] = [trials[at]!, trials[at + 1]!];
  const width = to.advance - from.advance;
  const x = (advance - from.advance) / width;
  const rise = to[key] - from[key];
  const start = slopeAt(trials, key, at) * width - rise;
  const end = rise - slopeAt(trials, key, at + 1) * width;
  return from[key] + x * rise + x * (1 - x) * ((1 - x) * start + x * end);
}

/** Slope of the parabola through a trial and its neighbors, or the two after or before it at an end. */
function slopeAt(trials: readonly SparkTrial[], key: 'torque' | 'octane', at: number): number {
  const middle = Math.min(Math.max(at, 1), trials.length - 2);
  const [a, b, c] = [trials[middle - 1], trials[middle], trials[middle + 1]];
  if (!a || !b || !c) return slope(trials[0]!, trials.at(-1)!, key);
  const bend = (slope(b, c, key) - slope(a, b, key)) / (c.advance - a.advance);
  return slope(a, b, key) + bend * (2 * trials[at]!.advance - a.advance - b.advance);
}

const slope = (from: SparkTrial, to: SparkTrial, key: 'torque' | 'octane'): number =>
  (to[key] - from[key]) / (to.advance - from.advance);
