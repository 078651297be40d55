import { radialModel } from '../numerics/radial-model.ts';
import type { Problem } from './problem.ts';
import { distance, type Field, type Known } from './field.ts';

/** What a place is expected to come to: its aims, and by how much it would pass its limits, in their usual sizes. */
export interface Guess {
  readonly aims: readonly number[];
  readonly breach: number;
}

/** A model holds as many of the nearest designs: more make it slow, not better. */
const held = 90;
/** So that noise is not followed: designs nearer to one another than about a hundredth of a range share their level. */
const give = 1e-6;
/** A limit passed by more than this many usual sizes is as bad as any. */
const worst = 3;

/** What the known designs say of places near one of them. */
export function guessAround(
  { quick, senses }: Problem,
  { tried, leftOut }: Field,
  sizes: readonly number[],
  center: readonly number[],
): (unit: readonly number[]) => Guess {
  const answered = nearest(tried.filter(isAnswered), center);
  const all = nearest([...tried, ...leftOut], center);
  const slow = quick.flatMap((isQuick, k) => (isQuick ? [] : [k]));
  const fast = quick.flatMap((isQuick, k) => (isQuick ? [k] : []));
  const excessOf = (known: Known, k: number): number => sized(known.excess[k]!, sizes[k]!);
  const scales = senses.map((_, k) => scaleOf(answered.map((n) => n.aims[k]!)));
  const aims = radialModel(
    answered.map((n) => n.unit),
    [
      ...scales.map(({ middle, width }, k) => answered.map((n) => (n.aims[k]! - middle) / width)),
      ...slow.map((k) => answered.map((n) => excessOf(n, k))),
    ],
    give,
  );
  const limits =
    fast.length === 0
      ? null
      : radialModel(
          all.map((n) => n.unit),
          fast.map((k) => all.map((n) => excessOf(n, k))),
          give,
        );
  // Designs without an answer are kept away from like those beyond a limit.
  const near = nearest(tried, center);
  const answers = near.every(isAnswered)
    ? null
    : radialModel(
        near.map((n) => n.unit),
        [near.map((n) => (isAnswered(n) ? -1 : 1))],
        give,
      );
  return (unit) => {
    const guessed = aims?.(unit) ?? [];
    const passed = [...guessed.slice(scales.length), ...(limits?.(unit) ?? []), ...(answers?.(unit) ?? [])];
    return {
      aims: aims ? scales.map(({ middle, width }, k) => middle + width * guessed[k]!) : scales.map((s) => s.middle),
      breach: passed.reduce((sum, e) => sum + Math.max(0, e), 0),
    };
  };
}

/** By how much designs usually miss or keep each limit: what a breach is measured by. */
export const usualSizes = ({ quick }: Problem, { tried, leftOut }: Field): readonly number[] =>
  quick.map((isQuick, k) => usualSize(isQuick ? [...tried, ...leftOut] : tried, k));
/** By how much a known design passes its limits, in their usual sizes. */
export const breachOf = (known: Known, sizes: readonly number[]): number =>
  known.excess.reduce((sum, e, k) => sum + (Number.isNaN(e) ? 0 : Math.max(0, sized(e, sizes[k]!))), 0);

const isAnswered = (known: Known): boolean => known.aims.length > 0 && known.aims.every(Number.isFinite);
const sized = (excess: number, size: number): number => Math.max(-worst, Math.min(worst, excess / size));
function usualSize(all: readonly Known[], k: number): number {
  const sizes = all.map((n) => Math.abs(n.excess[k]!)).filter((e) => Number.isFinite(e) && e > 0);
  return sizes.length > 0 ? sizes.reduce((sum, e) => sum + e, 0) / sizes.length : 1;
}
const nearest = (all: readonly Known[], center: readonly number[]): readonly Known[] =>
  all.length <= held
    ? all
    : all
        .map((known) => ({ known, far: distance(known.unit, center) }))
        .toSorted((a, b) => a.far - b.far)
        .slice(0, held)
        .map(({ known }) => known);
function scaleOf(values: readonly number[]): { readonly middle: number; readonly width: number } {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return values.length === 0 ? { middle: 0, width: 1 } : { middle: (low + high) / 2, width: (high - low) / 2 || 1 };
}
