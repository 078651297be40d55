import type { Cell, Input } from './cell.ts';

/** A field that is asked for only while a choice stands so. */
export interface FieldWhen {
  readonly field: Cell;
  readonly when: Input<string>;
  readonly is: readonly string[];
}

/** A chapter of the page, declared in its own room. */
export interface Chapter {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  /** What it decides. */
  readonly sentence: string;
  /** Inputs, and derived cells that are usually measured and held. */
  readonly fields: readonly (Cell | FieldWhen)[];
  readonly answers: readonly Cell[];
  /** Said on the page where this chapter's figures can hurt someone. */
  readonly caution?: string;
}

export const chapter = (spec: Chapter): Chapter => spec;
export const when = (choice: Input<string>, is: readonly string[], ...fields: readonly Cell[]): readonly FieldWhen[] =>
  fields.map((field) => ({ field, when: choice, is }));
