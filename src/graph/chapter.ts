import type { Phrase } from '../units/phrase.ts';
import type { Cell, Input } from './cell.ts';
import type { Verdict } from './kind.ts';

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
  /** What is asked and answered only on demand, under titles of its own. */
  readonly groups?: readonly Group[];
  /** Drawn figures, in order; curves among the answers and the reader's sweeps follow them. */
  readonly figures?: readonly ChapterFigure[];
  /** What the closed chapter says in one line. */
  readonly says: Cell<Phrase | null>;
  /** Said on the page where this chapter's figures can hurt someone. */
  readonly caution?: string;
}

/** A part of a chapter that is folded until somebody opens it. */
export interface Group {
  readonly title: string;
  readonly fields: readonly (Cell | FieldWhen)[];
  readonly answers: readonly Cell[];
}

export const chapter = (spec: Chapter): Chapter => spec;
export const when = (choice: Input<string>, is: readonly string[], ...fields: readonly Cell[]): readonly FieldWhen[] =>
  fields.map((field) => ({ field, when: choice, is }));

export const isWhen = (field: Cell | FieldWhen): field is FieldWhen => 'field' in field;
/** All that a chapter asks for, whatever its choices say, those of its groups last. */
export const fieldsOf = ({ fields, groups = [] }: Pick<Chapter, 'fields' | 'groups'>): readonly Cell[] =>
  [fields, ...groups.map((g) => g.fields)].flat().map((f) => (isWhen(f) ? f.field : f));
/** All that it answers, those of its groups last. */
export const answersOf = ({ answers, groups = [] }: Chapter): readonly Cell[] =>
  [answers, ...groups.map((g) => g.answers)].flat();

/** A figure of a chapter: its caption, the name of its form, and the cells the form is given. */
export interface ChapterFigure {
  readonly id: string;
  readonly caption: string;
  readonly form: string;
  readonly from: Readonly<Record<string, Cell>>;
  /** A derived or input cell that the figure's handle moves. */
  readonly moves?: Cell;
  /** Gives the form the ± of this cell as well, as `plusMinus`. */
  readonly plusMinus?: Cell;
  /** Cells it is given once they are there; it is drawn without them until then. */
  readonly later?: Readonly<Record<string, Cell>>;
  /** On a crank axis: it shows where the page's crank stands, or turns it. */
  readonly crank?: 'shows' | 'turns';
}
export const figure = (spec: ChapterFigure): ChapterFigure => spec;

/** The first screen: the fields that decide, the verdicts, and one plate. */
export interface Opening {
  readonly fields: readonly Cell[];
  readonly here: Cell<Verdict>;
  readonly low: Cell<Verdict>;
  readonly plate: ChapterFigure;
}

/** One cylinder through both turns of a cycle: its section over the lift of its valves, and the events on the way. */
export interface CycleView {
  readonly section: ChapterFigure;
  readonly lifts: ChapterFigure;
  readonly events: {
    readonly exhaustOpening: Cell<number>;
    readonly intakeOpening: Cell<number>;
    readonly exhaustClosing: Cell<number>;
    readonly intakeClosing: Cell<number>;
  };
}
export const opening = (spec: Opening): Opening => spec;
