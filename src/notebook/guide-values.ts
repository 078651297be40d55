import type { Cell } from '../graph/cell.ts';
import type { Curve } from '../graph/kind.ts';
import type { State } from '../graph/state.ts';
import { differenceFigure, format, withUnit } from '../units/format.ts';
import type { Quantity, System } from '../units/quantity.ts';
import { fromUnit, toUnit } from '../units/unit.ts';
import { type CurvePair, curvePair, largestLead, valueOn } from './curve-pair.ts';
import { kindOf, type PairPlace, type PairWord, type ValuePlace } from './guide-words.ts';
import type { Store } from './store.ts';

/** What stands at a place of a sentence. coming: it is still being worked out; none: there is none to be had. */
export type Standing<T> = { readonly is: 'there'; readonly value: T } | { readonly is: 'coming' | 'none' };
const none = { is: 'none' } as const;
const coming = { is: 'coming' } as const;
const there = <T>(value: T): Standing<T> => ({ is: 'there', value });

/** Where a cell stands in a variant, or in the one that is looked at; null where there is no such variant. */
export function stateIn(store: Store, cell: Cell, variant: string | undefined): State | null {
  const { document, others } = store;
  if (variant === undefined || variant === document.chosen) return store.state(cell);
  if (!others || document.variants.every((v) => v.id !== variant)) return null;
  const state = others.state(variant, cell);
  if (state.is !== 'waiting' || !store.live.isQuick(cell)) return state;
  const at = others.snapshot(variant); // nobody looks, but it is worked out at once
  return at.state(at.graph.slotOf.get(cell)!);
}
/** What stands in a cell. What is still being worked out is not said: a sentence is no place for figures that change. */
export function valueIn(store: Store, cell: Cell, variant?: string): Standing<unknown> {
  const state = stateIn(store, cell, variant);
  if (state?.is === 'ready') return there(state.value);
  return state === null || state.is === 'fault' ? none : coming;
}

/** The place for a cell's own value. */
export const placeFor = (cell: Cell, of?: string): ValuePlace => ({ is: 'value', cell, of, at: undefined });
/** What stands at a place for a value. */
export function valueAt(store: Store, { cell, of, at }: ValuePlace): Standing<unknown> {
  const found = valueIn(store, cell, of);
  if (found.is !== 'there' || at === undefined) return found;
  const value = valueOn(found.value as Curve, at);
  return value === null ? none : there(value);
}
/** Such a value as the page shows it, with its unit. */
export function textAt(store: Store, { cell, at }: Pick<ValuePlace, 'cell' | 'at'>, value: unknown): string {
  const system = store.systemOf(cell);
  return at === undefined ? cell.kind.text(value, system) : format(value as number, kindOf(cell).y, system);
}
/** What a value is called: "Torque at 2500 rpm" of a curve at a place. */
export function labelOf(store: Store, { cell, at }: Pick<ValuePlace, 'cell' | 'at'>): string {
  if (at === undefined) return cell.label;
  const { along, x } = kindOf(cell);
  const whole = cell.label.replace(new RegExp(`,? by ${along}$`, 'i'), '');
  return `${whole} at ${format(at, x, store.systemOf(cell))}`;
}

/** What stands at a place for two curves, in words. */
export function pairAt(store: Store, { word, curve, of }: PairPlace): Standing<string> {
  const [one, other] = [valueIn(store, curve, of[0]), valueIn(store, curve, of[1])];
  if (one.is !== 'there' || other.is !== 'there') return one.is === 'none' || other.is === 'none' ? none : coming;
  const pair = curvePair(one.value as Curve, other.value as Curve);
  const { x, y } = kindOf(curve);
  const system = store.systemOf(curve);
  if (word === 'cross' || word === 'crosses') {
    const places = pair.crossings.map((place) => roughly(place, x, system));
    return (word === 'cross') === (places.length === 1) && places.length > 0 ? there(listed(places)) : none;
  }
  const lead = leadIn(pair, word);
  if (lead === 0) return none;
  if (!word.endsWith('By')) return there(nameOf(store, lead > 0 ? of[0] : of[1]));
  return there(withUnit(differenceFigure(Math.abs(lead), y[system], y.trim), y[system]));
}
/** How far the first is ahead of the second on a side of where they cross; 0 where nobody is, or there is no such side. */
function leadIn(pair: CurvePair, word: PairWord): number {
  const [first, last] = [pair.crossings[0], pair.crossings.at(-1)];
  if (word.startsWith('ahead')) return first === undefined ? largestLead(pair, -Infinity, Infinity) : 0;
  if (first === undefined || last === undefined) return 0;
  return word.startsWith('below') ? largestLead(pair, -Infinity, first) : largestLead(pair, last, Infinity);
}
/** Where two curves cross is not worth more than three figures. */
function roughly(place: number, x: Quantity, system: System): string {
  const { unit } = x[system];
  return format(fromUnit(Number(toUnit(place, unit).toPrecision(3)), unit), x, system);
}
const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** The name of a variant in a sentence. */
export function nameOf({ document }: Store, variant: string): string {
  const name = document.variants.find((v) => v.id === variant)?.name ?? '';
  return /^[A-Z][a-z]/.test(name) ? name[0]!.toLowerCase() + name.slice(1) : name;
}
