import { format } from '../units/format.ts';
import { type Phrase, say } from '../units/phrase.ts';
import type { Quantity, System } from '../units/quantity.ts';

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json | undefined };

/** What sort of value a cell holds: when two are the same, how to keep one, how to say one. */
export interface Kind<T> {
  readonly name: string;
  /** A change that comes out the same goes no further. */
  same(a: T, b: T): boolean;
  /** No value that fails this leaves a cell. */
  sound(value: T): boolean;
  save(value: T): Json;
  /** The value saved so, or undefined where that is not one. */
  restore(saved: unknown): T | undefined;
  text(value: T, system: System): string;
}

/** The direction an angle is counted in: "61° after bottom dead center", in short ABDC. */
export interface Sense {
  readonly short: string;
  readonly words: string;
}

export interface Scalar extends Kind<number> {
  readonly name: 'scalar';
  readonly quantity: Quantity;
  readonly sense: Sense | undefined;
}
export const scalar = (quantity: Quantity, sense?: Sense): Scalar => ({
  name: 'scalar',
  quantity,
  sense,
  same: Object.is,
  sound: Number.isFinite,
  save: (value) => value,
  restore: (saved) => (typeof saved === 'number' && Number.isFinite(saved) ? saved : undefined),
  text: (value, system) => format(value, quantity, system),
});

/** A figure that may be left out; null is "not given". */
export interface Optional extends Kind<number | null> {
  readonly name: 'optional';
  readonly of: Scalar;
}
export const optional = (of: Scalar): Optional => ({
  name: 'optional',
  of,
  same: Object.is,
  sound: (value) => value === null || of.sound(value),
  save: (value) => value,
  restore: (saved) => (saved === null ? null : of.restore(saved)),
  text: (value, system) => (value === null ? 'not given' : of.text(value, system)),
});

export interface Option<T extends string = string> {
  readonly id: T;
  readonly label: string;
}
export interface Choice<T extends string = string> extends Kind<T> {
  readonly name: 'choice';
  readonly options: readonly Option<T>[];
}
export const choice = <const T extends string>(options: readonly Option<T>[]): Choice<T> => {
  const named = (id: unknown): T | undefined => options.find((o) => o.id === id)?.id;
  return {
    name: 'choice',
    options,
    same: Object.is,
    sound: (value) => named(value) !== undefined,
    save: (value) => value,
    restore: named,
    text: (value) => options.find((o) => o.id === value)!.label,
  };
};

/** Samples of y against x, both SI, x rising. */
export interface Curve {
  readonly x: Float64Array;
  readonly y: Float64Array;
}
export interface CurveKind extends Kind<Curve> {
  readonly name: 'curve';
  readonly x: Quantity;
  readonly y: Quantity;
  /** What x is, as it stands on an axis. */
  readonly along: string;
}
export const curve = (x: Quantity, y: Quantity, along = 'Crank angle from firing top dead center'): CurveKind => ({
  name: 'curve',
  x,
  y,
  along,
  same: (a, b) => sameArrays(a.x, b.x) && sameArrays(a.y, b.y),
  sound: (value) =>
    value.x.length === value.y.length && value.x.every(Number.isFinite) && value.y.every(Number.isFinite),
  save: (value) => ({ x: [...value.x], y: [...value.y] }),
  restore: (saved) => {
    if (typeof saved !== 'object' || saved === null) return undefined;
    const { x: xs, y: ys } = saved as { x?: unknown; y?: unknown };
    return numbers(xs) && numbers(ys) && xs.length === ys.length
      ? { x: Float64Array.from(xs), y: Float64Array.from(ys) }
      : undefined;
  },
  text: (value, system) =>
    value.x.length === 0
      ? 'no points'
      : `${value.x.length} points, at most ${format(
          value.y.reduce((m, v) => Math.max(m, v)),
          y,
          system,
        )}`,
});

/** Rows of figures, SI, one quantity a column; plain arrays, since a document keeps them. */
export type Rows = readonly (readonly number[])[];
export interface Column {
  readonly id: string;
  readonly label: string;
  readonly quantity: Quantity;
}
export interface Table extends Kind<Rows> {
  readonly name: 'table';
  readonly columns: readonly Column[];
}
export const table = (columns: readonly Column[]): Table => {
  const isRow = (row: unknown): row is readonly number[] => numbers(row) && row.length === columns.length;
  return {
    name: 'table',
    columns,
    same: (a, b) => a === b || (a.length === b.length && a.every((row, i) => sameArrays(row, b[i]!))),
    sound: (value) => isAll(value, isRow),
    save: (value) => value,
    restore: (saved) => (Array.isArray(saved) && isAll(saved, isRow) ? saved : undefined),
    text: (value, system) =>
      value.map((row) => row.map((v, i) => format(v, columns[i]!.quantity, system)).join(' : ')).join(', '),
  };
};

/**
 * A judgement in one word. `edges` part the words in order; the sentence is
 * word + lead + value + place + advice, so that a ± can be said beside the value.
 */
export interface Verdict {
  readonly word: string;
  readonly value: number;
  readonly edges: readonly number[];
  readonly lead: Phrase;
  readonly place: Phrase;
  readonly advice: Phrase;
}
export interface VerdictKind extends Kind<Verdict> {
  readonly name: 'verdict';
  readonly quantity: Quantity;
  /** From the lowest value up; `tone` says which way is the worse. */
  readonly words: readonly { readonly id: string; readonly label: string; readonly tone: Tone }[];
}
/** How much of a caution a word is. */
export type Tone = 'comfortable' | 'borderline' | 'beyond';
export const verdict = (quantity: Quantity, words: VerdictKind['words']): VerdictKind => ({
  name: 'verdict',
  quantity,
  words,
  same: (a, b) => JSON.stringify(a) === JSON.stringify(b),
  sound: (value) =>
    Number.isFinite(value.value) && value.edges.every(Number.isFinite) && words.some((w) => w.id === value.word),
  save: (value) => value as unknown as Json,
  restore: () => undefined,
  text: (value) => words.find((w) => w.id === value.word)!.label,
});

/** The word of a value among rising edges: an edge belongs to the word above it, the last one to the word below. */
export function wordAt(kind: VerdictKind, value: number, edges: readonly number[]): string {
  const above = edges.filter((edge, i) => (i === edges.length - 1 ? value > edge : value >= edge)).length;
  return kind.words[above]!.id;
}

/** The verdict as a sentence. `plusMinus` is the bound on its value, SI; 0 says nothing of it. */
export function sentence(kind: VerdictKind, v: Verdict, plusMinus = 0): Phrase {
  const label = kind.words.find((w) => w.id === v.word)!.label;
  const figure = { si: v.value, as: kind.quantity.id };
  const { unit, digits } = kind.quantity.us;
  const isShown = plusMinus >= 0.5 * 10 ** -digits * unit.factor; // not "± 0.00"
  const bound: Phrase = isShown ? ['\u202f±\u202f', { si: plusMinus, as: kind.quantity.id, difference: true }] : [];
  const either = plusMinus > 0 && v.edges.some((edge) => Math.abs(edge - v.value) < plusMinus);
  return [
    label[0]!.toUpperCase() + label.slice(1),
    ...v.lead,
    ' ',
    figure,
    ...bound,
    ' ',
    ...v.place,
    either ? '; within its ± it could be either.' : '.',
    ...(v.advice.length > 0 ? [' ', ...v.advice] : []),
  ];
}

/** A remark that some values call for, or null: a caution beside a field, not a fault. */
export interface RemarkKind extends Kind<Phrase | null> {
  readonly name: 'remark';
}
export const remark: RemarkKind = {
  name: 'remark',
  same: (a, b) => JSON.stringify(a) === JSON.stringify(b),
  sound: () => true,
  save: (value) => value,
  restore: () => undefined,
  text: (value, system) => (value === null ? 'nothing to remark' : say(value, system)),
};

/** Figures that belong together and are only ever read by other cells: not shown. */
export interface RecordKind<T> extends Kind<T> {
  readonly name: 'record';
}
export const record = <T extends Readonly<Record<string, number>>>(): RecordKind<T> => ({
  name: 'record',
  same: (a, b) => Object.keys(a).every((key) => Object.is(a[key], b[key])),
  sound: (value) => Object.values(value).every(Number.isFinite),
  save: (value) => value,
  restore: () => undefined,
  text: () => '',
});

/** Figures and lists of figures that belong together, or null; only ever read by other cells: not shown. */
export const structure = <T extends object | null>(): RecordKind<T> => ({
  name: 'record',
  same: (a, b) => JSON.stringify(a) === JSON.stringify(b),
  sound: (value) => allFinite(value),
  save: (value) => value as unknown as Json,
  restore: () => undefined,
  text: () => '',
});
const allFinite = (value: unknown): boolean =>
  typeof value === 'number'
    ? Number.isFinite(value)
    : typeof value === 'object' && value !== null
      ? Object.values(value).every(allFinite)
      : true;

const numbers = (a: unknown): a is readonly number[] => Array.isArray(a) && isAll(a, Number.isFinite);
/** Of a list with holes, `every` would only look at what is there. */
const isAll = (list: readonly unknown[], holds: (each: unknown) => boolean): boolean =>
  list.findIndex((each) => !holds(each)) < 0;
const sameArrays = (a: ArrayLike<number>, b: ArrayLike<number>): boolean => {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
};
