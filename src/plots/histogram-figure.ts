import type { Tone } from '../graph/kind.ts';

/** A caution band over the axis; open where an end is null. */
export interface Zone {
  readonly tone: Tone;
  readonly label: string;
  readonly from: number | null;
  readonly to: number | null;
}
/** How often a figure comes to what; all in the unit shown. */
export interface Histogram {
  /** What is counted, as it stands on the axis; the digits it deserves, and a sign that follows each figure. */
  readonly axis: { readonly title: string; readonly digits: number; readonly after: string };
  /** Least first. */
  readonly sorted: readonly number[];
  /** How many draws there were, also without an answer. */
  readonly draws: number;
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  /** So few draws that neither end is worth a mark. */
  readonly isFew: boolean;
  /** Between them lies all that is worth a bar. */
  readonly ends: readonly [number, number];
  /** As it stands; NaN if it has no value. */
  readonly here: number;
  readonly zones: readonly Zone[];
  /** What there is to see, for who does not see it. */
  readonly label: string;
}

/** Figures with so many decimals, and a sign after each. */
export const written =
  (decimals: number, after: string) =>
  (value: number): string =>
    `${value.toFixed(decimals).replace('-', '−')}${after}`;
/** The decimals that a round figure needs. */
export function decimalsOf(value: number): number {
  let decimals = 0;
  while (decimals < 12 && Math.abs(value - Number(value.toFixed(decimals))) > Math.abs(value) * 1e-9) decimals++;
  return decimals;
}
/**
 * How the places of a histogram are written: with the digits that its figure deserves, and more where they lie so close
 * together that they would all be the same.
 */
export function deserved({ axis, low, high }: Pick<Histogram, 'axis' | 'low' | 'high'>): (value: number) => string {
  const apart = high - low;
  const needed = apart > 0 ? Math.min(axis.digits + 3, Math.ceil(1 - Math.log10(apart))) : 0;
  return written(Math.max(axis.digits, needed), axis.after);
}
