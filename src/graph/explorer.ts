import type { Phrase } from '../units/phrase.ts';
import type { Json } from './kind.ts';
import type { SweepResult } from './sweep.ts';

/** A sweep by the ids of its cells and saved values, to be run where the same graph can be built. */
export interface SweepTask {
  /** What stands by itself: inputs and held cells. */
  readonly inputs: Readonly<Record<string, Json>>;
  readonly held: Readonly<Record<string, Json>>;
  readonly vary: string;
  readonly xs: readonly number[];
  readonly family?: { readonly vary: string; readonly values: readonly Json[] };
  readonly fixed: Readonly<Record<string, Json>>;
  readonly read: readonly string[];
}

export type SweepNews =
  | { readonly is: 'waiting'; readonly done: number }
  /** What stands so far; points to come are not numbers. */
  | { readonly is: 'coming'; readonly result: SweepResult; readonly done: number }
  | { readonly is: 'ready'; readonly result: SweepResult }
  | { readonly is: 'fault'; readonly message: Phrase };

/** Runs sweeps whose path holds a slow cell somewhere else, so that the page is not held up. */
export interface Explorer {
  sweep(task: SweepTask, report: (news: SweepNews) => void): () => void;
}
