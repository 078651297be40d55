import type { Phrase } from '../units/phrase.ts';
import type { Range } from './cell.ts';
import type { Take } from './designs.ts';
import type { DrawsResult } from './draws.ts';
import type { Json } from './kind.ts';
import type { MapResult } from './map.ts';
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

/** Draws within tolerances by the ids of their cells. */
export interface DrawsAsked {
  readonly tolerances: Readonly<Record<string, number>>;
  readonly read: readonly string[];
  readonly from: number;
  readonly count: number;
  readonly seconds?: number;
  readonly seed: number;
}
export interface SharesAsked {
  readonly tolerances: Readonly<Record<string, number>>;
  readonly read: string;
}
/** A share by the id of its cell, SI. */
export interface SharedBy {
  readonly cell: string;
  readonly tolerance: number;
  readonly change: number;
}

/** A map by the ids of its cells and saved values. */
export interface MapAsked {
  readonly x: { readonly vary: string; readonly values: readonly number[] };
  readonly y: { readonly vary: string; readonly values: readonly number[] };
  readonly fixed: Readonly<Record<string, Json>>;
  /** Figures of results, or of a verdict its edge of that number. */
  readonly read: readonly { readonly cell: string; readonly edge?: number }[];
  readonly known?: MapResult;
}

/** Several results at several settings, by the ids of their cells; a row of values a setting. */
export interface DesignsAsked {
  readonly vary: readonly string[];
  readonly designs: readonly (readonly number[])[];
  readonly read: readonly { readonly cell: string; readonly take: Take }[];
}

/** The what-ifs that can be worked out elsewhere: what is asked, as plain data, and what is answered. */
export interface Explorations {
  readonly sweep: { readonly asked: SweepAsked; readonly answer: SweepResult };
  readonly map: { readonly asked: MapAsked; readonly answer: MapResult };
  readonly draws: { readonly asked: DrawsAsked; readonly answer: DrawsResult };
  readonly shares: { readonly asked: SharesAsked; readonly answer: readonly SharedBy[] };
  readonly designs: { readonly asked: DesignsAsked; readonly answer: readonly (readonly number[])[] };
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

/**
 * Works out what-ifs somewhere else, so that the page is not held up: those whose path holds a slow cell, and those of
 * very many runs. What is urgent is done in a moment, and goes before what takes long.
 */
export interface Explorer {
  explore<K extends Exploration>(
    kind: K,
    task: Task<K>,
    report: (news: Found<Answer<K>>) => void,
    isUrgent?: boolean,
  ): () => void;
}
