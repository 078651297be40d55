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
export type Item = ChapterItem | SweepItem;

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
