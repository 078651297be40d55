import type { Json } from '../graph/kind.ts';
import type { System } from '../units/quantity.ts';

/** Values by cell id, SI, as kinds save them. */
export type Saved = Readonly<Record<string, Json>>;

export interface Variant {
  readonly id: string;
  readonly name: string;
  readonly inputs: Saved;
  readonly held: Saved;
}

export interface ChapterItem {
  readonly id: string;
  readonly type: 'chapter';
  readonly chapter: string;
}
/** "Show [read] against [vary] from [..] to [..], one line for each [family]." Values SI, ids of cells. */
export interface SweepItem {
  readonly id: string;
  readonly type: 'sweep';
  readonly read: string;
  readonly vary: string;
  readonly from: number;
  readonly to: number;
  readonly family?: { readonly vary: string; readonly values: readonly Json[] };
  /** Inputs kept at a value of their own in this sweep alone. */
  readonly fixed?: Saved;
}
/** One axis of a map: a cell's id and its ends, SI. */
export interface MapAxisItem {
  readonly vary: string;
  readonly from: number;
  readonly to: number;
}
/** "Show [read] over [x] from [..] to [..] and [y] from [..] to [..]." */
export interface MapItem {
  readonly id: string;
  readonly type: 'map';
  readonly read: string;
  readonly x: MapAxisItem;
  readonly y: MapAxisItem;
  /** Inputs kept at a value of their own in this map alone. */
  readonly fixed?: Saved;
}
/** "How often [read] comes to what if every ± holds, drawn [count] times", or for [seconds] where a draw is slow. */
export interface DrawsItem {
  readonly id: string;
  readonly type: 'draws';
  readonly read: string;
  readonly count?: number;
  readonly seconds?: number;
}
/** What is wanted most or least: a result, or from `from` to `to` the mean of a curve. SI. */
export interface BestAim {
  readonly sense: 'most' | 'least';
  readonly read: string;
  readonly from?: number;
  readonly to?: number;
}
/** What a design has to keep to: a verdict at worst a word, a result at least or at most a figure. SI. */
export type BestLimit =
  | { readonly read: string; readonly worst: string }
  | { readonly read: string; readonly least: number }
  | { readonly read: string; readonly most: number };
/** "Most [aim] by changing [vary] from [..] to [..], with [limit] at least [..]. Try [budget] designs." */
export interface BestItem {
  readonly id: string;
  readonly type: 'best';
  readonly aims: readonly BestAim[];
  readonly vary: readonly { readonly id: string; readonly from: number; readonly to: number }[];
  readonly limits: readonly BestLimit[];
  readonly budget: number;
}
/** A figure that the reader adds to a chapter. */
export type FigureItem = SweepItem | MapItem | BestItem | DrawsItem;
export type Item = ChapterItem | FigureItem;

/** A notebook as it is kept: what differs from its numbered base. Plain data. */
export interface Document {
  readonly version: 1;
  readonly base: number;
  readonly title: string;
  readonly sentence: string;
  readonly inputs: Saved;
  readonly held: Saved;
  readonly units: { readonly system: System; readonly fields: Readonly<Record<string, System>> };
  /** ± by cell id, SI, as a difference. */
  readonly tolerances: Readonly<Record<string, number>>;
  readonly variants: readonly Variant[];
  /** The variant looked at; null is the document itself. */
  readonly chosen: string | null;
  readonly pins: readonly string[];
  readonly page: readonly Item[];
  /** What the sender saw: pinned answers and the release that made them. */
  readonly answers?: { readonly release: string; readonly values: Saved };
}

/** A starting point. Its guide is read by `readGuide` and stays with the file: no notebook, and no link, holds it. */
export interface Scenario extends Document {
  readonly guide?: unknown;
}

export const documentVersion = 1;
/** Some mailers and chats cut links beyond this many signs. */
export const longestLink = 8000;
export const mostVariants = 24;
/** Of the designs that one look for the best may try, and of what its sentence names. */
export const mostOfBest = { designs: 1000, aims: 2, vary: 4, limits: 6 };
/** Of a variant, in signs. */
export const longestName = 60;

/** The values of a variant laid over the document's own: what the reader's engine is. Held null is "let go here". */
export function layered(
  document: Document,
  variant: string | null = document.chosen,
): Pick<Variant, 'inputs' | 'held'> {
  const over = document.variants.find((v) => v.id === variant);
  const held = { ...document.held, ...over?.held };
  return {
    inputs: { ...document.inputs, ...over?.inputs },
    held: Object.fromEntries(Object.entries(held).filter(([, value]) => value !== null)),
  };
}
/** How many draws, and for how many seconds where each of them is slow: what is asked for if nothing is said, and what may be. */
export const usualDraws = { count: 10_000, seconds: 30 };
export const mostDraws = { count: [100, 100_000], seconds: [1, 600] } as const;
