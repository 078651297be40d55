import type { Cell } from '../graph/cell.ts';
import type { Reading, Take } from '../graph/designs.ts';
import type { Optional, Scalar } from '../graph/kind.ts';
import type { Sense } from '../graph/front.ts';
import { Probe } from '../graph/probe.ts';
import type { Design, Figures, Problem, Span } from '../graph/problem.ts';
import type { Snapshot } from '../graph/snapshot.ts';
import { Impossible, lastGood } from '../graph/state.ts';
import { fromUnit, tidy, toUnit } from '../units/unit.ts';
import type { Catalogue } from './catalogue.ts';
import type { BestAim, BestItem, BestLimit } from './document.ts';
import type { Store } from './store.ts';
import { variables } from './sweeps.ts';

/** The sentence of a look for the best, with its cells found. */
export interface BestQuestion {
  readonly item: BestItem;
  readonly vary: readonly Cell[];
  readonly aims: readonly { readonly item: BestAim; readonly cell: Cell; readonly sense: Sense }[];
  readonly limits: readonly { readonly item: BestLimit; readonly cell: Cell; readonly isQuick: boolean }[];
  /** What is read of each design: the aims, the limits, and the words of those limits that are verdicts. */
  readonly readings: readonly Reading[];
  /** Whether a design takes long, so that it has to be worked out elsewhere. */
  readonly isSlow: boolean;
}

/**
 * The question as it can be asked now. Throws NotSettled, and Impossible where two inputs are one, an aim does not move,
 * or an input moves nothing.
 */
export function bestQuestionOf(item: BestItem, { cells }: Catalogue, at: Snapshot): BestQuestion {
  const named = (id: string): Cell => cells.get(id)!;
  const vary = item.vary.map(({ id }) => named(id));
  const aims = item.aims.map((aim): BestQuestion['aims'][number] => ({
    item: aim,
    cell: named(aim.read),
    sense: aim.sense === 'most' ? 1 : -1,
  }));
  const limits = item.limits.map((limit) => {
    const cell = named(limit.read);
    return { item: limit, cell, isQuick: !new Probe(at, vary, [cell]).isSlow };
  });
  for (const { cell } of aims)
    if (!isMoved(at, vary, cell)) throw new Impossible([`Nothing that is changed here moves ${name(cell)}.`]);
  const reads = [...aims, ...limits].map(({ cell }) => cell);
  for (const cell of vary)
    if (!reads.some((read) => isMoved(at, [cell], read)))
      throw new Impossible([`Changing ${name(cell)} moves nothing of this.`]);
  const verdicts = limits.filter(({ item: limit }) => 'worst' in limit);
  return {
    item,
    vary,
    aims,
    limits,
    readings: [
      ...aims.map(({ item: aim, cell }) => ({ cell, take: takeOf(aim) })),
      ...limits.map(({ item: limit, cell }): Reading => ({
        cell,
        take: 'worst' in limit ? { is: 'beyond', word: limit.worst } : { is: 'figure' },
      })),
      ...verdicts.map(({ cell }): Reading => ({ cell, take: { is: 'word' } })),
    ],
    isSlow: new Probe(at, vary, reads).isSlow,
  };
}
const takeOf = ({ from, to }: BestAim): Take =>
  from === undefined || to === undefined ? { is: 'figure' } : { is: 'mean', from, to };
const isMoved = (at: Snapshot, vary: readonly Cell[], read: Cell): boolean =>
  vary.includes(read) || new Probe(at, vary, [read]).path.includes(read);
const name = ({ label }: Cell): string =>
  /^[A-Z][a-z]/.test(label) ? label[0]!.toLowerCase() + label.slice(1) : label;

/** What a row of readings comes to. */
export function figuresOf({ aims, limits }: BestQuestion, row: readonly number[]): Figures {
  return {
    aims: row.slice(0, aims.length),
    excess: limits.map(({ item }, k) => excessOf(item, row[aims.length + k]!)),
  };
}
/** The quick limits alone, and the rest not known. */
export const quickReadings = ({ aims, limits, readings }: BestQuestion): readonly Reading[] =>
  readings.slice(aims.length, aims.length + limits.length).filter((_, k) => limits[k]!.isQuick);
export function quickFigures({ limits }: BestQuestion, row: readonly number[]): Figures {
  let next = 0;
  return { aims: [], excess: limits.map(({ item, isQuick }) => (isQuick ? excessOf(item, row[next++]!) : NaN)) };
}
function excessOf(limit: BestLimit, read: number): number {
  const excess = 'worst' in limit ? read : 'least' in limit ? limit.least - read : read - limit.most;
  return Number.isNaN(excess) ? Infinity : excess;
}
/** The value that a limit read: a verdict's is the place of its word. */
export function limitRead({ aims, limits }: BestQuestion, row: readonly number[], k: number): number {
  const words = limits.slice(0, k).filter(({ item }) => 'worst' in item).length;
  return 'worst' in limits[k]!.item ? row[aims.length + limits.length + words]! : row[aims.length + k]!;
}

/** Designs that are worked out at once: more keep several workers busy, fewer learn sooner from one another. */
const widths = { slow: 12, quick: 6 };

/** The question as bare figures. The present setting, if it lies within, is tried first. */
export function problemOf(
  store: Store,
  { item, vary, aims, limits, isSlow }: BestQuestion,
  random: () => number,
): Problem {
  const now = vary.map((cell) => lastGood(store.state(cell)));
  const isInside = now.every((value, k) => {
    const { from, to } = item.vary[k]!;
    return typeof value === 'number' && value >= Math.min(from, to) && value <= Math.max(from, to);
  });
  return {
    spans: item.vary.map(({ from, to }, k): Span => ({ from, to, snap: snapOf(store, vary[k]!) })),
    senses: aims.map((aim) => aim.sense),
    quick: limits.map((limit) => limit.isQuick),
    budget: item.budget,
    width: isSlow ? widths.slow : widths.quick,
    random,
    ...(isInside ? { start: now as number[] } : {}),
  };
}
/** The nearest figure as it is shown: what is read off the page is what was worked out. */
function snapOf(store: Store, cell: Cell): (si: number) => number {
  const kind = cell.kind as Partial<Scalar> & Partial<Pick<Optional, 'of'>>;
  const { unit, digits } = (kind.quantity ?? kind.of!.quantity)[store.systemOf(cell)];
  const scale = 10 ** digits;
  return (si) => tidy(fromUnit(Math.round(toUnit(si, unit) * scale) / scale, unit));
}

/** Where a design stands in the ranges, each from 0 to 1. */
export const placeOf = ({ item }: BestQuestion, { at }: Design): readonly number[] =>
  at.map((v, k) => (v - item.vary[k]!.from) / (item.vary[k]!.to - item.vary[k]!.from));

/** What can be changed for these aims: what a sweep of one of them can go against, and takes no time itself. */
export const changeable = (store: Store, reads: readonly Cell[]): readonly Cell[] => {
  const all = new Set(reads.flatMap((read) => variables(store, read)));
  return store.live.graph.order.filter((c) => all.has(c) && store.live.isQuick(c));
};
