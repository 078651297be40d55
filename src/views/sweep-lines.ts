import type { Cell } from '../graph/cell.ts';
import { present } from '../graph/state.ts';
import type { Snapshot } from '../graph/snapshot.ts';
import type { SweepResult } from '../graph/sweep.ts';
import { type Question, sweepNow } from '../notebook/sweeps.ts';
import type { Store } from '../notebook/store.ts';
import type { Line } from '../plots/line-figure.ts';
import type { Shown } from '../plots/variants.ts';
import { toUnit } from '../units/unit.ts';
import { shownOf, withUnit } from './words.ts';

/** What a sweep comes to in another variant. */
export interface OtherSweep extends Shown {
  readonly found: SweepResult;
}
/** What a sweep has come to so far. */
export interface Swept {
  readonly found: SweepResult;
  /** False: more points are to come. */
  readonly isWhole: boolean;
  readonly self: Shown | undefined;
  readonly others: readonly OtherSweep[];
}

/** True where the lines of one sweep lie on those of another. */
export const isSame = (a: SweepResult, b: SweepResult): boolean =>
  a.length === b.length &&
  a.every(([row], i) =>
    row!.every((v, k) => {
      const other = b[i]![0]![k]!;
      return Object.is(v, other) || Math.abs(v - other) <= 1e-9 * Math.abs(v);
    }),
  );

/** The lines of a sweep in the reader's units: those of its family, one of them the present setting, and those of other variants. */
export function sweepLines(store: Store, at: Snapshot, question: Question, swept: Swept, slow: boolean): Line[] {
  const { vary, read, family } = question;
  const { found, isWhole, self, others } = swept;
  const show = (cell: Cell, row: Iterable<number>): number[] =>
    Array.from(row, (si) => toUnit(si, shownOf(store, cell).unit));
  const xs = show(vary, question.xs);
  const place = others.length > 0 ? (self?.place ?? 0) : 0;
  const dots = (whole: boolean): Pick<Line, 'dots'> => (slow ? { dots: whole ? 'all' : 'some' } : {});
  let inks = 1;
  const mine = found.map(([row], i): Line => {
    const isNow = family === null || isPresent(store, question, i);
    return {
      name: family ? nameOf(store, question, i) : others.length > 0 ? (self?.name ?? '') : '',
      xs,
      ys: show(read, row!),
      present: isNow,
      variant: place,
      ink: isNow ? 1 : 2 + ((inks++ - 1) % 4),
      ...dots(isWhole),
    };
  });
  const theirs = others.flatMap((other, k) =>
    other.found.map(([row], i): Line => ({
      name: other.name,
      ...(family ? { full: `${nameOf(store, question, i)}, ${other.name}` } : {}),
      xs,
      ys: show(read, row!),
      present: false,
      variant: other.place,
      ink: family ? mine[i]!.ink! : 2 + (k % 4),
      ...dots(true),
    })),
  );
  const isMissing = family && !slow && !mine.some((l) => l.present);
  if (!isMissing) return [...mine, ...theirs];
  const [[row]] = sweepNow(at, { ...question, family: null }) as [[Float64Array]];
  const now = present(store.state(family.vary));
  const name = typeof now === 'number' ? withUnit(store, family.vary, now) : '';
  return [...mine, { name, xs, ys: show(read, row), present: true, variant: place }, ...theirs];
}

function isPresent(store: Store, { family }: Question, i: number): boolean {
  const now = present(store.state(family!.vary));
  const member = family!.values[i];
  return typeof now === 'number' && typeof member === 'number'
    ? Math.abs(now - member) < 1e-9 * Math.max(1e-6, Math.abs(now))
    : now === member;
}
function nameOf(store: Store, { family }: Question, i: number): string {
  const { vary, values } = family!;
  const member = values[i];
  return typeof member === 'number' ? withUnit(store, vary, member) : vary.kind.text(member, store.systemOf(vary));
}
