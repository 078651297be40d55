import type { Cell } from '../graph/cell.ts';
import type { CurveKind, VerdictKind } from '../graph/kind.ts';
import type { Design } from '../graph/problem.ts';
import { type BestQuestion, limitRead } from '../notebook/bests.ts';
import type { BestAim } from '../notebook/document.ts';
import type { Store } from '../notebook/store.ts';
import { differenceFigure, figure, format, withUnit } from '../units/format.ts';
import type { Quantity, Shown } from '../units/quantity.ts';
import { figureOf, lower, quantityOf, senseOf, shownOf } from './words.ts';

/** The quantity that an aim is told in: of a curve, that of its y. */
export const aimQuantity = (cell: Cell): Quantity => quantityOf(cell) ?? (cell.kind as CurveKind).y;
export const aimShown = (store: Store, cell: Cell): Shown => aimQuantity(cell)[store.systemOf(cell)];
/** The places on a curve's axis, as they are shown. */
export const alongShown = (store: Store, cell: Cell): Shown => (cell.kind as CurveKind).x[store.systemOf(cell)];

/** What an aim is called: "torque by engine speed, mean from 2500 to 5000 rpm". */
export function aimName(store: Store, cell: Cell, { from, to }: BestAim): string {
  if (from === undefined || to === undefined) return cell.label;
  const shown = alongShown(store, cell);
  return `${cell.label}, mean from ${figure(from, shown)} to ${withUnit(figure(to, shown), shown)}`;
}
export const aimText = (store: Store, cell: Cell, si: number): string =>
  Number.isFinite(si) ? format(si, aimQuantity(cell), store.systemOf(cell)) : 'no answer';
export function aimDifference(store: Store, cell: Cell, si: number): string {
  const shown = aimShown(store, cell);
  return withUnit(differenceFigure(si, { ...shown, digits: shown.digits + 1 }), shown);
}
export function inputText(store: Store, cell: Cell, si: number): string {
  const { unit } = shownOf(store, cell);
  const sense = senseOf(cell);
  const text = withUnit(figureOf(store, cell, si), { unit, digits: 0, step: 1 });
  return sense ? `${text} ${sense.short}` : text;
}

/** One figure of a design, with its name. */
export interface Told {
  readonly name: string;
  readonly text: string;
  readonly isYours: boolean;
}
/** All that is told of a design: its inputs, its aims, and what its limits read. */
export function toldOf(store: Store, question: BestQuestion, design: Design, row: readonly number[]): readonly Told[] {
  const { vary, aims, limits } = question;
  const limit = (k: number): string => {
    const { cell } = limits[k]!;
    const read = limitRead(question, row, k);
    const kind = cell.kind as unknown as VerdictKind;
    if (kind.name === 'verdict') return kind.words[read]?.label ?? 'no answer';
    return aimText(store, cell, read);
  };
  const isToldTwice = (k: number): boolean =>
    aims.some(({ cell, item }) => cell === limits[k]!.cell && item.from === undefined) ||
    limits.slice(0, k).some(({ cell }) => cell === limits[k]!.cell);
  return [
    ...vary.map((cell, k) => ({ name: cell.label, text: inputText(store, cell, design.at[k]!), isYours: true })),
    ...aims.map(({ cell, item }, k) => ({
      name: aimName(store, cell, item),
      text: aimText(store, cell, design.aims[k]!),
      isYours: false,
    })),
    ...limits.flatMap(({ cell }, k) => (isToldTwice(k) ? [] : [{ name: cell.label, text: limit(k), isYours: false }])),
  ];
}
export const inOneLine = (told: readonly Told[]): string =>
  told.map(({ name, text }) => `${lower(name)} ${text}`).join(', ');
