import type { Phrase } from '../units/phrase.ts';
import type { Cell, From, Given, Input, Range } from './cell.ts';
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
  /** What a button writes into fields, from answers. */
  readonly actions?: readonly Action[];
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

/** Values for inputs, to be set in one step. */
export type Settings = readonly (readonly [Input, unknown])[];
/** The value of one figure at which another comes to a target, all SI. */
export interface Search {
  readonly vary: Cell<number>;
  readonly read: Cell<number>;
  readonly target: number;
  readonly range: Range;
}
interface ActionSpec<F extends From> {
  readonly id: string;
  /** What the button will do: "Write this table". */
  readonly label: string | ((given: Given<F>) => string);
  /** What the button is called while its label cannot be told yet. */
  readonly short?: string;
  /** What it has done, for the line that offers to undo it: "Wrote the table". */
  readonly did?: string;
  /** What comes of it, beside the button. */
  readonly note: string;
  /** It waits until all of these have their settled values. */
  readonly from: F;
  /** What it sets; `found` is what the search came to, if it has one. Pure; throws Impossible where there is nothing to set. */
  readonly sets: (given: Given<F>, found: number) => Settings;
  /** What has to be found first; null where there is nothing to look for. Throws Impossible. */
  readonly solves?: (given: Given<F>) => Search | null;
  /** The title of the chapter's group in which it stands; else it follows the answers. */
  readonly group?: string;
}
/** Something that can be done in a chapter at one stroke. */
export interface Action extends Pick<ActionSpec<From>, 'id' | 'note' | 'from' | 'short' | 'did' | 'group'> {
  label(given: never): string;
  sets(given: never, found: number): Settings;
  solves(given: never): Search | null;
}
export const action = <const F extends From>({ label, solves, ...spec }: ActionSpec<F>): Action => ({
  ...spec,
  ...(typeof label === 'string' ? { short: label, label: () => label } : { label }),
  solves: solves ?? (() => null),
});

/** The actions that stand in a group, or among the chapter's own answers. */
export const actionsOf = ({ actions = [] }: Chapter, group?: Group): readonly Action[] =>
  actions.filter((a) => a.group === group?.title);

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
  /** Its form shows the values of the other variants as well, as `others`. */
  readonly overlays?: true;
  /**
   * It stands only where the notebook has two variants, and its form is given what `join` makes of the values of both.
   * Pure; throws Impossible where they cannot be compared.
   */
  readonly compares?: { join(mine: never, theirs: never): object };
  /** On a crank axis: it shows where the page's crank stands, or turns it. */
  readonly crank?: 'shows' | 'turns';
}
type FigureSpec<F extends From> = Omit<ChapterFigure, 'from' | 'compares'> & {
  readonly from: F;
  readonly compares?: { join(mine: Named<F>, theirs: Named<F>): object };
};
/** What a figure is given of a variant, with the variant's name. */
type Named<F extends From> = Given<F> & { readonly name: string };
export const figure = <const F extends From>(spec: FigureSpec<F>): ChapterFigure => spec;

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
