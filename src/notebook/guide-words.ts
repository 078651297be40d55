import type { Cell } from '../graph/cell.ts';
import type { Curve, CurveKind } from '../graph/kind.ts';
import { type Catalogue, cellNamed } from './catalogue.ts';
import { GuideFault } from './guide-fault.ts';

/** A place in a sentence for the value of a cell. */
export interface ValuePlace {
  readonly is: 'value';
  readonly cell: Cell;
  /** The variant it is a value of, by its id; undefined: the one that is looked at. */
  readonly of: string | undefined;
  /** Where a curve is read, SI. */
  readonly at: number | undefined;
}
const pairWords = ['cross', 'crosses', 'below', 'belowBy', 'above', 'aboveBy', 'ahead', 'aheadBy'] as const;
export type PairWord = (typeof pairWords)[number];
/**
 * A place for what two variants' curves have to do with each other: where they cross once, or several times; which
 * variant is ahead below the crossing, above it, or all the way where they do not cross, and by how much at most.
 */
export interface PairPlace {
  readonly is: 'pair';
  readonly word: PairWord;
  readonly curve: Cell<Curve>;
  readonly of: readonly [string, string];
}
/** `goal`: where the step asks a cell to go; `chosen`: the name of the variant that is looked at. */
export type Place = ValuePlace | PairPlace | { readonly is: 'goal' } | { readonly is: 'chosen' };
export type Sentence = readonly (string | Place)[];
/** Words with places for values, in one or more wordings: the first of them that has all its values is said. */
export type GuideWords = readonly Sentence[];

/** What a guide's words may name. */
export interface Names {
  readonly catalogue: Catalogue;
  readonly variants: readonly { readonly id: string }[];
}

/**
 * "{staticRatio} on paper": in braces stands a cell, "early:peakTorque" (of a variant), "late:torqueCurve@262" (a curve at
 * a place, SI), "cross torqueCurve early late" (two curves), "chosen", or "goal" where something is asked for. A list is
 * wordings to choose from. Throws GuideFault.
 */
export function wordsOf(saved: unknown, at: string, names: Names, hasGoal = false): GuideWords {
  const wordings = Array.isArray(saved) ? (saved as readonly unknown[]) : [saved];
  if (wordings.length === 0) throw new GuideFault(`${at} is missing.`);
  return wordings.map((wording) =>
    text(wording, at)
      .split(/(\{[^{}]*\})/)
      .filter((part) => part !== '')
      .map((part) => (part.startsWith('{') ? placeOf(part.slice(1, -1), at, names, hasGoal) : part)),
  );
}
function placeOf(name: string, at: string, names: Names, hasGoal: boolean): Place {
  if (name === 'goal' && hasGoal) return { is: 'goal' };
  if (name === 'chosen') return { is: 'chosen' };
  const [first, id, ...variants] = name.split(' ');
  const word = pairWords.find((w) => w === first);
  if (!word) return valuePlace(name, at, names);
  const [one, other] = variants;
  if (one === undefined || other === undefined || variants.length > 2)
    throw new GuideFault(`${at}: “${name}” wants a curve and two variants.`);
  return {
    is: 'pair',
    word,
    curve: curveNamed(id, at, names),
    of: [variantNamed(one, at, names), variantNamed(other, at, names)],
  };
}

/** A cell, of a variant or a curve at a place if it says so. Throws GuideFault. */
export function valuePlace(saved: unknown, at: string, names: Names): ValuePlace {
  const [, variant, id, along] = /^(?:([^:]*):)?([^@]*)(?:@(.*))?$/s.exec(String(saved))!;
  const of = variant === undefined ? undefined : variantNamed(variant, at, names);
  if (along === undefined) return { is: 'value', cell: shownCell(id, at, names), of, at: undefined };
  const cell = curveNamed(id, at, names);
  const where = along.trim() === '' ? NaN : Number(along);
  if (!Number.isFinite(where)) throw new GuideFault(`${at}: “${along}” is no place along ${cell.label}.`);
  return { is: 'value', cell, of, at: where };
}
export function variantNamed(id: unknown, at: string, { variants }: Names): string {
  const found = variants.find((v) => v.id === id);
  if (!found) throw new GuideFault(`${at}: there is no variant “${String(id)}”.`);
  return found.id;
}

const unspeakable = ['record', 'curve', 'table', 'remark'];
/** A cell whose value can be said. Throws GuideFault. */
export function shownCell(id: unknown, at: string, names: Names): Cell {
  const cell = named(id, at, names);
  if (unspeakable.includes(cell.kind.name)) throw new GuideFault(`${at}: ${cell.label} cannot be said in a sentence.`);
  return cell;
}
function curveNamed(id: unknown, at: string, names: Names): Cell<Curve> {
  const cell = named(id, at, names);
  if (!isCurve(cell)) throw new GuideFault(`${at}: ${cell.label} is no curve.`);
  return cell;
}
function named(id: unknown, at: string, { catalogue }: Names): Cell {
  const cell = typeof id === 'string' ? cellNamed(catalogue, id) : undefined;
  if (!cell) throw new GuideFault(`${at}: nothing is called “${String(id)}”.`);
  return cell;
}
const isCurve = (cell: Cell): cell is Cell<Curve> => cell.kind.name === 'curve';
/** How a curve's values are counted. */
export const kindOf = (curve: Cell): CurveKind => curve.kind as unknown as CurveKind;

/** What is written there. Throws GuideFault where nothing is. */
export function text(saved: unknown, what: string): string {
  if (typeof saved !== 'string' || saved.trim() === '') throw new GuideFault(`${what} is missing.`);
  return saved;
}
