import { interpolate } from '../../numerics/interpolate.ts';

/** One row of a spark table. */
export interface SparkPoint {
  /** Of the crankshaft, rad/s. */
  readonly speed: number;
  /** Before firing top dead center, rad. */
  readonly advance: number;
}

/** The best spark, but never past where knock is due. */
export interface HeldSpark {
  /** Octane number of the fuel. */
  readonly heldTo: number;
}

const rpm = Math.PI / 30;
const degree = Math.PI / 180;

/**
 * The curve behind a total advance: 20 degrees less at 800 rpm, a straight line, all in at 2800 (common practice, no
 * source).
 *
 * @param total rad before firing top dead center
 */
export function sparkCurveOf(total: number): readonly SparkPoint[] {
  return [
    { speed: 800 * rpm, advance: total - 20 * degree },
    { speed: 2800 * rpm, advance: total },
  ];
}

/**
 * Advance read off a table, rad before firing top dead center; straight lines between rows, held at its ends.
 *
 * @param table rows with increasing speed
 * @param speed of the crankshaft, rad/s
 * @throws RangeError when the table is empty
 */
export function sparkAt(table: readonly SparkPoint[], speed: number): number {
  return interpolate(
    table.map((row) => row.speed),
    table.map((row) => row.advance),
    speed,
  );
}
