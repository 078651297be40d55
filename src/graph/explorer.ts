import type { Phrase } from '../units/phrase.ts';
import type { Range } from './cell.ts';
import type { Json } from './kind.ts';
import type { Solution } from './solve.ts';
import type { SweepResult } from './sweep.ts';

/** What stands by itself, saved by id: enough to build the same values elsewhere. */
export interface Ground {
  readonly inputs: Readonly<Record<string, Json>>;
  readonly held: Readonly<Record<string, Json>>;
}
/** A sweep by the ids of its cells and saved values. */
export interface SweepAsked {
  readonly vary: string;
  readonly xs: readonly number[];
  readonly family?: { readonly vary: string; readonly values: readonly Json[] };
  readonly fixed: Readonly<Record<string, Json>>;
  readonly read: readonly string[];
}
/** A target for one result, to be reached by one figure. */
export interface SolveAsked {
  readonly vary: string;
  readonly read: string;
  readonly target: number;
  readonly range: Range;
  /** The result at the present setting, worked out in full. */
  readonly known?: number;
}

/** The what-ifs that can be worked out elsewhere: what is asked, as plain data, and what is answered. */
export interface Explorations {
  readonly sweep: { readonly asked: SweepAsked; readonly answer: SweepResult };
  readonly solve: { readonly asked: SolveAsked; readonly answer: Solution };
}
export type Exploration = keyof Explorations;
export type Task<K extends Exploration> = Ground & Explorations[K]['asked'];
export type Answer<K extends Exploration> = Explorations[K]['answer'];

export type Found<T> =
  | { readonly is: 'waiting'; readonly done: number }
  /** What stands so far. */
  | { readonly is: 'coming'; readonly result: T; readonly done: number }
  | { readonly is: 'ready'; readonly result: T }
  | { readonly is: 'fault'; readonly message: Phrase };

/** Works out what-ifs whose path holds a slow cell somewhere else, so that the page is not held up. */
export interface Explorer {
  explore<K extends Exploration>(kind: K, task: Task<K>, report: (news: Found<Answer<K>>) => void): () => void;
}
