import { interpolate } from '../numerics/interpolate.ts';
import type { Cell, Steps } from './cell.ts';
import type { Curve, Tone, Verdict, VerdictKind } from './kind.ts';
import { numeric } from './numeric.ts';
import { Probe } from './probe.ts';
import type { Snapshot } from './snapshot.ts';

/**
 * What is taken from a result: its figure, the mean of a curve between two places of its axis, how far a verdict is
 * beyond a word (0 and less: at worst that word), or which of its words it is.
 */
export type Take =
  | { readonly is: 'figure' }
  | { readonly is: 'mean'; readonly from: number; readonly to: number }
  | { readonly is: 'beyond'; readonly word: string }
  | { readonly is: 'word' };
export interface Reading {
  readonly cell: Cell;
  readonly take: Take;
}

/**
 * What several results come to at several settings, one row a setting; not a number where there is no answer. Yields
 * the rows so far after each. Each setting is worked out by itself: it comes to the same whoever works it out, and
 * after whatever.
 */
export function* designSteps(
  at: Snapshot,
  vary: readonly Cell[],
  designs: readonly (readonly number[])[],
  readings: readonly Reading[],
): Steps<number[][]> {
  const rows: number[][] = [];
  for (const design of designs) {
    rows.push(designRow(at, vary, design, readings));
    yield { value: rows.slice(), done: rows.length / designs.length };
  }
  return rows;
}

/** The same for one setting. */
export function designRow(
  at: Snapshot,
  vary: readonly Cell[],
  design: readonly number[],
  readings: readonly Reading[],
): number[] {
  const cells = [...new Set(readings.map((r) => r.cell))];
  const probe = new Probe(at, vary, cells);
  design.forEach((value, k) => probe.put(k, value));
  probe.tryRun();
  return readings.map(({ cell, take }) => {
    const value = probe.tryGet(cells.indexOf(cell));
    return value === undefined ? NaN : taken(cell, value, take);
  });
}

function taken({ kind }: Cell, value: unknown, take: Take): number {
  switch (take.is) {
    case 'figure':
      return numeric(value);
    case 'mean':
      return meanOf(value as Curve, take.from, take.to);
    case 'beyond':
      return beyond(kind as unknown as VerdictKind, value as Verdict, take.word);
    case 'word':
      return (kind as unknown as VerdictKind).words.findIndex((w) => w.id === (value as Verdict).word);
  }
}

/** The mean of a curve between two places on its axis, straight from sample to sample; not a number where it ends before. */
export function meanOf({ x, y }: Curve, from: number, to: number): number {
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  const little = 1e-9 * (Math.abs(low) + Math.abs(high));
  if (x.length < 2 || !(high > low) || low < x[0]! - little || high > x[x.length - 1]! + little) return NaN;
  const stops = [low, ...x.filter((v) => v > low && v < high), high];
  const values = stops.map((v) => interpolate(x, y, v));
  const area = stops.reduce(
    (sum, v, i) => (i === 0 ? 0 : sum + ((values[i]! + values[i - 1]!) / 2) * (v - stops[i - 1]!)),
    0,
  );
  return area / (high - low);
}

export const toneRank: Readonly<Record<Tone, number>> = { comfortable: 0, borderline: 1, beyond: 2 };

/**
 * How far a verdict's value is from the nearest that would be at worst a word: above 0 beyond it, below 0 by how much it
 * is inside.
 */
export function beyond({ words }: VerdictKind, { word, value, edges }: Verdict, worst: string): number {
  const rankOf = (id: string): number => toneRank[words.find((w) => w.id === id)!.tone];
  const isKept = words.map((w) => rankOf(w.id) <= rankOf(worst));
  const isInside = isKept[words.findIndex((w) => w.id === word)]!;
  // The edges between words that are kept and words that are not are what counts.
  const counts = edges.filter((_, i) => isKept[i] !== isKept[i + 1]);
  const far = counts.length === 0 ? Infinity : Math.min(...counts.map((edge) => Math.abs(edge - value)));
  if (isInside) return far === Infinity ? -1 : -far;
  return far === Infinity ? 1 : Math.max(far, Number.MIN_VALUE);
}
