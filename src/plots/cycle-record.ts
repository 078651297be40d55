/** Pressure along a pipe through a cycle: m from the valve, rising; Pa, row by row, a row for each angle; m/s, mean. */
export interface PipeRecord {
  readonly place: ArrayLike<number>;
  readonly pressure: ArrayLike<number>;
  readonly sound: number;
}
/** One cylinder's cycle as a form is given it: rad from firing top dead center, SI, pressures absolute. */
export interface CycleRecord {
  readonly angle: ArrayLike<number>;
  readonly cylinderPressure: ArrayLike<number>;
  readonly intakePressure: ArrayLike<number>;
  readonly exhaustPressure: ArrayLike<number>;
  /** kg/s the wanted way: in through the intake, out through the exhaust. */
  readonly intakeFlow: ArrayLike<number>;
  readonly exhaustFlow: ArrayLike<number>;
  /** m2; nothing where the valve is shut. */
  readonly intakeArea: ArrayLike<number>;
  readonly exhaustArea: ArrayLike<number>;
  readonly runner: PipeRecord;
  readonly primary: PipeRecord;
  readonly outside: number;
}
const cycle = 4 * Math.PI;
const hair = 1e-6;

/**
 * The record's entries in the order of its strokes, power first, and their angles from 0 to two turns. The cycle repeats
 * itself, so that what lies before firing top comes last, a cycle later; firing top stands at both ends.
 */
export function byStroke(angle: ArrayLike<number>): {
  readonly order: readonly number[];
  readonly angles: readonly number[];
} {
  const whole = Array.from(angle, (a, i) => ({ at: a < -hair ? a + cycle : Math.max(0, a), i }))
    .filter(({ i }) => i > 0) // the first is the last again
    .toSorted((a, b) => a.at - b.at);
  const rows = [...whole, { at: cycle, i: whole[0]!.i }];
  return { order: rows.map((r) => r.i), angles: rows.map((r) => r.at) };
}

/** Values of a record in such an order. */
export const taken = (values: ArrayLike<number>, order: readonly number[]): readonly number[] =>
  order.map((i) => values[i]!);

/** From where to where a valve is open, on angles that rise; null where it never is. */
export function openSpan(
  area: readonly number[],
  angles: readonly number[],
  least = 0,
): readonly [number, number] | null {
  const from = area.findIndex((a) => a > least);
  const to = area.findLastIndex((a) => a > least);
  return from < 0 ? null : [angles[from]!, angles[to]!];
}
