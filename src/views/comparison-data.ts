import type { Cell } from '../graph/cell.ts';
import type { Tone, Verdict, VerdictKind } from '../graph/kind.ts';
import { lastGood, type State } from '../graph/state.ts';
import { baseValue } from '../notebook/base.ts';
import { layered } from '../notebook/document.ts';
import type { Store } from '../notebook/store.ts';
import type { Twin } from '../plots/drawing.ts';
import { toUnit } from '../units/unit.ts';
import { differenceOf, figureOf, lower, quantityOf, senseOf, shownOf } from './words.ts';

/** One of the engines that are compared: where its cells stand, undefined while nobody looks. */
export interface Column {
  readonly id: string | null;
  readonly name: string;
  readonly place: number;
  readonly state: (cell: Cell) => State | undefined;
}
/** What stands in one row under one name. */
export interface Entry {
  readonly text: string;
  /** Written close to the figure, and to how far it is from another: a degree sign. */
  readonly sign: string;
  readonly tone?: Tone;
  /** How it was come by, or why there is nothing. */
  readonly note: string;
  /** Against the engine that the others are held against: "+0.35", and "+4.6 %" where a share means something. */
  readonly difference: string;
  readonly share: string;
  /** Not of the present. */
  readonly isStale: boolean;
}
export interface Row {
  readonly cell: Cell;
  readonly unit: string;
  readonly isSame: boolean;
  readonly entries: readonly Entry[];
}

/** A row of what differs going in: what each has set or held, else what it comes to there. */
export function rowIn(store: Store, cell: Cell, columns: readonly Column[], beside: number): Row {
  const { document } = store;
  return rowOf(store, cell, columns, beside, (column) => {
    const { inputs, held } = layered(document, column.id);
    const saved = cell.role === 'input' ? (inputs[cell.id] ?? baseValue(document.base, cell.id)) : held[cell.id];
    if (saved === undefined) return { state: column.state(cell), note: 'computed' };
    const value = cell.kind.restore(saved);
    return {
      state: value === undefined ? undefined : { is: 'ready', value },
      note: cell.role === 'input' ? '' : 'held',
    };
  });
}
/** A row of what comes out. */
export const rowOut = (store: Store, cell: Cell, columns: readonly Column[], beside: number): Row =>
  rowOf(store, cell, columns, beside, (column) => ({ state: column.state(cell), note: '' }));

function rowOf(
  store: Store,
  cell: Cell,
  columns: readonly Column[],
  beside: number,
  found: (column: Column) => { readonly state: State | undefined; readonly note: string },
): Row {
  const all = columns.map(found);
  const reference = all[beside]?.state;
  const entries = all.map(({ state, note }, i) =>
    entryOf(store, cell, state, note, i === beside ? undefined : reference),
  );
  const [first] = entries;
  const isSame = entries.every((e) => e.text === first!.text && e.difference === '' && !e.isStale && e.text !== '…');
  return { cell, unit: unitSigns(store, cell), isSame, entries };
}

function entryOf(store: Store, cell: Cell, state: State | undefined, note: string, beside: State | undefined): Entry {
  const none = { note, sign: '', difference: '', share: '', isStale: false };
  if (!state) return { ...none, text: '…' };
  if (state.is === 'fault') {
    const at = store.catalogue.cells.get(state.fault.about);
    return { ...none, text: 'no value', note: at ? `waits for ${lower(at.label)}` : note };
  }
  const value = lastGood(state);
  if (value === undefined) return { ...none, text: '…' };
  const isStale = state.is === 'waiting';
  const now = state.is === 'ready' ? value : undefined; // what is still coming differs by where it has got to
  const than = beside?.is === 'ready' ? beside.value : undefined;
  const told = typeof now === 'number' && typeof than === 'number' ? differs(store, cell, now, than) : null;
  const shown = shownAs(store, cell, value);
  const sign = typeof value === 'number' && shownOf(store, cell).unit.symbol === '°' ? '°' : '';
  return { ...none, ...shown, sign, isStale, difference: told?.difference ?? '', share: told?.share ?? '' };
}
function shownAs(store: Store, cell: Cell, value: unknown): Pick<Entry, 'text' | 'tone'> {
  if (value === null) return { text: 'not given' };
  if (typeof value === 'number') return { text: figureOf(store, cell, value) };
  if (cell.kind.name === 'verdict') {
    const { label, tone } = (cell.kind as unknown as VerdictKind).words.find((w) => w.id === (value as Verdict).word)!;
    return { text: label, tone };
  }
  if (cell.kind.name === 'table') {
    const { length } = value as readonly unknown[];
    return { text: length === 0 ? 'none' : `${length} ${length === 1 ? 'row' : 'rows'}` };
  }
  return { text: cell.kind.text(value, store.systemOf(cell)) };
}

/** Less than this share of a figure is how it was computed, not what it is. */
const nothing = 1e-9;

/** How far a figure is from another; no share where the zero of its scale is a convention, as of angles and °F. */
function differs(store: Store, cell: Cell, value: number, than: number): Pick<Entry, 'difference' | 'share'> | null {
  if (Math.abs(value - than) <= nothing * Math.abs(than)) return null;
  const { unit, digits } = shownOf(store, cell);
  // As a reader takes one figure from the other; finer where the two look alike.
  const [a, b] = [value, than].map((si) => Number(toUnit(si, unit).toFixed(digits))) as [number, number];
  const by = a === b ? value - than : (a - b) * unit.factor;
  const text = differenceOf(store, cell, by);
  if (!/[1-9]/.test(text)) return null;
  const isShare = unit.symbol !== '°' && unit.symbol !== '%' && unit.offset === 0 && !senseOf(cell) && than > 0;
  const percent = 100 * (value / than - 1);
  const share = Math.abs(percent).toFixed(Math.abs(percent) < 10 ? 1 : 0);
  return { difference: signed(by, text), share: isShare && Number(share) > 0 ? `${signed(by, share)}\u00a0%` : '' };
}
const signed = (by: number, text: string): string => `${by > 0 ? '+' : '−'}${text.replace('−', '')}`;

function unitSigns(store: Store, cell: Cell): string {
  if (!quantityOf(cell)) return '';
  const { symbol } = shownOf(store, cell).unit;
  const sense = senseOf(cell);
  return sense ? `${symbol} ${sense.short}` : symbol;
}

/** The table as it stands, for a file: values first, then how far each is from the one they are held against. */
export function twinOf(columns: readonly Column[], rows: readonly Row[], beside: number): Twin {
  const others = columns.flatMap((c, i) => (i === beside ? [] : [{ ...c, i }]));
  return {
    columns: [
      '',
      'Unit',
      ...columns.map((c) => c.name),
      ...others.map((c) => `${c.name} less ${columns[beside]!.name}`),
    ],
    rows: rows.map(({ cell, unit, entries }) => [
      cell.label,
      unit,
      ...entries.map((e) => e.text),
      ...others.map(({ i }) => entries[i]!.difference),
    ]),
  };
}
