import type { Sense } from './front.ts';

/** What one input may be. */
export interface Span {
  readonly from: number;
  readonly to: number;
  /** The nearest value that is worth trying: figures as they are shown, whole counts. */
  readonly snap?: (value: number) => number;
}
/** What is looked for, as bare figures: no cells. */
export interface Problem {
  /** One to four inputs. */
  readonly spans: readonly Span[];
  /** One or two aims, each to be large (1) or small (-1). */
  readonly senses: readonly Sense[];
  /** For each limit, whether it is known before any slow work. */
  readonly quick: readonly boolean[];
  /** How many designs are worked out in all. */
  readonly budget: number;
  /** How many of them are asked for at once. */
  readonly width: number;
  /** A design that is tried before all others, as it is: the present one. */
  readonly start?: readonly number[];
  /** Gives figures from 0 up to 1: where it gives the same ones, the answer is the same. */
  readonly random: () => number;
}
/** What a design comes to. */
export interface Figures {
  /** Not a number where there is no answer. */
  readonly aims: readonly number[];
  /** How far each limit is passed, in any unit: met at 0 and below. Infinity without an answer; NaN: not known yet. */
  readonly excess: readonly number[];
}
export interface Design extends Figures {
  readonly at: readonly number[];
}
export interface Found {
  /** Those that were worked out, in the order in which they were asked for. */
  readonly tried: readonly Design[];
  /** Those that a quick limit left out: they cost nothing. */
  readonly leftOut: readonly Design[];
}
/** Designs to find out about, none or some: their quick limits alone, or all there is to know. One answer each, in order. */
export interface Ask {
  readonly of: 'limits' | 'all';
  readonly designs: readonly (readonly number[])[];
  readonly found: Found;
}

/** Whether a design has an answer and keeps within all limits. */
export const isGood = ({ aims, excess }: Figures): boolean =>
  aims.every((v) => Number.isFinite(v)) && excess.every((e) => e <= 0);
