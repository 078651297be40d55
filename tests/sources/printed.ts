import { describe, expect, it } from 'vitest';

type Figure = number | readonly number[];

/** One published figure. Inputs carry their unit in the name; the mark says how the figure was come by. */
interface Printed {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Figure;
  /** Set where `expected` is the two ends of a band. */
  readonly range?: boolean;
  readonly tol: { readonly abs?: number; readonly rel?: number };
  readonly unit: string;
  readonly source: string;
  readonly mark: string;
}

/** Reads an input of the row at hand; a name the row does not have is an error, not a NaN. */
export type Given = (name: string) => number;

/** What of ours answers a quantity (or one row, by its id), in the row's unit. */
export type Calls = Readonly<Record<string, (given: Given) => Figure>>;

/** One test a row, and two that guard the table itself: no row is missing and no call is idle. */
export function holdAgainst(rows: readonly Printed[], ids: readonly string[], calls: Calls): void {
  describe('the published rows', () => {
    it('are all here, each once', () => expect(rows.map((row) => row.id).toSorted()).toEqual([...ids].toSorted()));

    it('use every call', () => {
      const asked = new Set(rows.flatMap((row) => [row.id, row.quantity]));
      expect(Object.keys(calls).filter((name) => !asked.has(name))).toEqual([]);
    });

    for (const row of rows)
      it(`${row.id} ${row.quantity}${inputsOf(row)}: ${String(row.expected)} ${row.unit} (${row.mark}: ${row.source})`, () => {
        const call = calls[row.id] ?? calls[row.quantity];
        expect(call, `no call answers ${row.id}`).toBeDefined();
        compare(
          row,
          call!((name) => numberIn(row, name)),
        );
      });
  });
}

/** The ids of a table: `numbered('KIN', 1, 34)` is KIN-01 to KIN-34. */
export const numbered = (prefix: string, first: number, last: number): readonly string[] =>
  Array.from({ length: last - first + 1 }, (_, i) => `${prefix}-${String(first + i).padStart(2, '0')}`);

export const numberIn = (row: Printed, name: string): number => {
  const value = row.inputs[name];
  if (typeof value !== 'number') throw new Error(`${row.id} has no input ${name}`);
  return value;
};

function inputsOf(row: Printed): string {
  const inputs = Object.entries(row.inputs).map(([name, value]) => `${name} ${String(value)}`);
  return inputs.length === 0 ? '' : ` at ${inputs.join(', ')}`;
}

function compare(row: Printed, found: Figure): void {
  const values = [found].flat();
  const expected = [row.expected].flat();
  if (row.range) {
    expect(values).toHaveLength(1);
    expect(values[0]).toBeGreaterThanOrEqual(expected[0]!);
    expect(values[0]).toBeLessThanOrEqual(expected[1]!);
    return;
  }
  expect(values).toHaveLength(expected.length);
  expected.forEach((figure, i) => {
    // A printed tolerance of nothing still leaves room for degrees having gone through radians and back.
    const rounding = 16 * Number.EPSILON * Math.max(180, Math.abs(figure));
    const room = (row.tol.abs ?? row.tol.rel! * Math.abs(figure)) + rounding;
    expect(Math.abs(values[i]! - figure), `${values[i]} for ${figure}`).toBeLessThanOrEqual(room);
  });
}
