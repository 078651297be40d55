import type { Cell } from '../graph/cell.ts';
import type { Json, VerdictKind } from '../graph/kind.ts';
import { type Catalogue, cellNamed } from './catalogue.ts';
import {
  mostOfBest,
  type FigureItem,
  type MapAxisItem,
  type MapItem,
  type Saved,
  type SweepItem,
  type BestAim,
  type BestItem,
  type BestLimit,
  type DrawsItem,
  mostDraws,
} from './document.ts';

export type Loose = Readonly<Record<string, unknown>>;
type Reader<T> = (thing: Loose, id: string, catalogue: Catalogue) => T | undefined;

/** How each figure of the page is made of what was kept; undefined where it cannot be read. */
const readers: { readonly [T in FigureItem['type']]: Reader<Extract<FigureItem, { type: T }>> } = {
  sweep: sweepOf,
  map: mapOf,
  best: bestOf,
  draws: drawsOf,
};

/** A figure of the page, or undefined if it cannot be read. */
export function figureItem(thing: Loose, id: string, catalogue: Catalogue): FigureItem | undefined {
  const { type } = thing;
  return typeof type === 'string' && Object.hasOwn(readers, type)
    ? readers[type as FigureItem['type']](thing, id, catalogue)
    : undefined;
}

/** The most values that a family has. */
const mostMembers = 12;

function sweepOf(thing: Loose, id: string, catalogue: Catalogue): SweepItem | undefined {
  const [read, vary] = [named(catalogue, thing.read), named(catalogue, thing.vary)];
  if (!read || !vary || !isNumeric(vary) || !isFigure(thing.from) || !isFigure(thing.to) || thing.from === thing.to)
    return undefined;
  const family = isObject(thing.family) ? thing.family : undefined;
  const member = named(catalogue, family?.vary);
  const members =
    member && Array.isArray(family?.values) ? family.values.map((v) => member.kind.restore(v)) : undefined;
  if (thing.family !== undefined && (!members || members.length > mostMembers || members.includes(undefined)))
    return undefined;
  const fixed = fixedOf(thing.fixed, catalogue);
  if (!fixed) return undefined;
  return {
    id,
    type: 'sweep',
    read: read.id,
    vary: vary.id,
    from: thing.from,
    to: thing.to,
    ...(member && members ? { family: { vary: member.id, values: members.map((v) => member.kind.save(v)) } } : {}),
    ...fixed,
  };
}

function mapOf(thing: Loose, id: string, catalogue: Catalogue): MapItem | undefined {
  const read = named(catalogue, thing.read);
  const [x, y] = [axisOf(thing.x, catalogue), axisOf(thing.y, catalogue)];
  const fixed = fixedOf(thing.fixed, catalogue);
  if (!read || !isShown(read) || !x || !y || x.vary === y.vary || !fixed) return undefined;
  return { id, type: 'map', read: read.id, x, y, ...fixed };
}
function axisOf(thing: unknown, catalogue: Catalogue): MapAxisItem | undefined {
  if (!isObject(thing)) return undefined;
  const { from, to } = thing;
  const vary = named(catalogue, thing.vary);
  // Between two ends out of all reason there may be no figure to go by.
  return vary && isNumeric(vary) && isFigure(from) && isFigure(to) && from !== to && isFigure(to - from)
    ? { vary: vary.id, from, to }
    : undefined;
}
/** A result with a figure of its own. */
const isShown = (cell: Cell): boolean =>
  cell.role !== 'input' && (cell.kind.name === 'scalar' || cell.kind.name === 'verdict');

function bestOf(thing: Loose, id: string, catalogue: Catalogue): BestItem | undefined {
  const aims = allOf(thing.aims, [1, mostOfBest.aims], (aim) => aimOf(aim, catalogue));
  const vary = allOf(thing.vary, [1, mostOfBest.vary], (each) => {
    const cell = named(catalogue, each.id);
    const { from, to } = each;
    return cell && isNumeric(cell) && isFigure(from) && isFigure(to) && from !== to
      ? { id: cell.id, from, to }
      : undefined;
  });
  const limits = allOf(thing.limits, [0, mostOfBest.limits], (limit) => limitOf(limit, catalogue));
  if (!aims || !vary || !limits || !isFigure(thing.budget)) return undefined;
  if (new Set(vary.map((v) => v.id)).size < vary.length) return undefined;
  const budget = Math.round(Math.min(mostOfBest.designs, Math.max(1, thing.budget)));
  return { id, type: 'best', aims, vary, limits, budget };
}
function aimOf({ sense, ...thing }: Loose, catalogue: Catalogue): BestAim | undefined {
  const cell = named(catalogue, thing.read);
  if (!cell || (sense !== 'most' && sense !== 'least')) return undefined;
  const { from, to } = thing;
  if (cell.kind.name === 'curve')
    return isFigure(from) && isFigure(to) && from !== to ? { sense, read: cell.id, from, to } : undefined;
  return cell.kind.name === 'scalar' ? { sense, read: cell.id } : undefined;
}
function limitOf({ worst, least, most, ...thing }: Loose, catalogue: Catalogue): BestLimit | undefined {
  const cell = named(catalogue, thing.read);
  if (cell?.kind.name === 'verdict') {
    const word = (cell.kind as unknown as VerdictKind).words.find((w) => w.id === worst);
    return word ? { read: cell.id, worst: word.id } : undefined;
  }
  if (cell?.kind.name !== 'scalar') return undefined;
  if (isFigure(least)) return { read: cell.id, least };
  return isFigure(most) ? { read: cell.id, most } : undefined;
}
/** A list of so many things at least and at most, or undefined if one of them cannot be read. */
function allOf<T>(
  thing: unknown,
  [least, most]: readonly [number, number],
  read: (each: Loose) => T | undefined,
): readonly T[] | undefined {
  if (!Array.isArray(thing) || thing.length < least || thing.length > most) return undefined;
  // Of a list with holes, `map` would pass over them.
  const made = Array.from(thing as readonly unknown[], (each) => (isObject(each) ? read(each) : undefined));
  return made.every((each) => each !== undefined) ? made : undefined;
}

/** What an item keeps fixed, to be spread into it; undefined if it cannot be read. */
export function fixedOf(thing: unknown, catalogue: Catalogue): { readonly fixed?: Saved } | undefined {
  if (thing === undefined) return {};
  if (!isObject(thing)) return undefined;
  const fixed: Record<string, Json> = {};
  for (const [name, saved] of Object.entries(thing)) {
    const cell = named(catalogue, name);
    const value = cell?.role === 'input' ? cell.kind.restore(saved) : undefined;
    if (!cell || value === undefined) return undefined;
    fixed[cell.id] = cell.kind.save(value);
  }
  return Object.keys(fixed).length > 0 ? { fixed } : {};
}

export const named = (catalogue: Catalogue, name: unknown): Cell | undefined =>
  typeof name === 'string' ? cellNamed(catalogue, name) : undefined;
export const isObject = (thing: unknown): thing is Loose =>
  typeof thing === 'object' && thing !== null && !Array.isArray(thing);
export const isFigure = (n: unknown): n is number => typeof n === 'number' && Number.isFinite(n);
export const isNumeric = (cell: Cell): boolean => cell.kind.name === 'scalar' || cell.kind.name === 'optional';

function drawsOf(thing: Loose, id: string, catalogue: Catalogue): DrawsItem | undefined {
  const read = named(catalogue, thing.read);
  if (!read || read.role === 'input' || (read.kind.name !== 'scalar' && read.kind.name !== 'verdict')) return undefined;
  const { count, seconds } = thing;
  const isWithin = (n: unknown, [least, most]: readonly [number, number]): n is number =>
    typeof n === 'number' && Number.isInteger(n) && n >= least && n <= most;
  if (count !== undefined && !isWithin(count, mostDraws.count)) return undefined;
  if (seconds !== undefined && !isWithin(seconds, mostDraws.seconds)) return undefined;
  return {
    id,
    type: 'draws',
    read: read.id,
    ...(count === undefined ? {} : { count }),
    ...(seconds === undefined ? {} : { seconds }),
  };
}
