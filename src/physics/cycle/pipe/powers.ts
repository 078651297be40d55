/** Rows in a unit of pressure ratio, and the ratios between which the table is used. */
const fineness = 1024;
const [least, most] = [0.2, 4];
/** Rows between standstill and sound. */
const rows = 512;

/** Two isentropic powers of one gas in tables, each within 2e-6 of the formula. */
export interface PowerTables {
  readonly gamma: number;
  /** (p/p1)^(1/gamma) for p/p1 from 0 to 4. */
  readonly density: Float64Array;
  /** (1 + (gamma - 1)/2 M2)^(gamma/(gamma - 1)) for M2 from 0 to 1. */
  readonly stagnation: Float64Array;
}

const kept = new Map<number, PowerTables>();

/** The tables for a ratio of specific heats; made once and kept. */
export function powerTables(gamma: number): PowerTables {
  const found = kept.get(gamma);
  if (found) return found;
  const tables: PowerTables = {
    gamma,
    density: Float64Array.from({ length: most * fineness + 2 }, (_, i) => (i / fineness) ** (1 / gamma)),
    stagnation: Float64Array.from(
      { length: rows + 2 },
      (_, i) => (1 + (0.5 * (gamma - 1) * i) / rows) ** (gamma / (gamma - 1)),
    ),
  };
  kept.set(gamma, tables);
  return tables;
}

/** Density of a gas over its density before an isentropic change, from the ratio of the pressures. */
export function densityRatio(tables: PowerTables, pressureRatio: number): number {
  if (!(pressureRatio > least && pressureRatio < most)) return pressureRatio ** (1 / tables.gamma);
  const at = pressureRatio * fineness;
  const row = at | 0;
  const below = tables.density[row]!;
  return below + (at - row) * (tables.density[row + 1]! - below);
}

/**
 * Stagnation over static pressure.
 *
 * @param machSquared square of the Mach number, 0 to 1
 */
export function stagnationRatio(tables: PowerTables, machSquared: number): number {
  const at = machSquared * rows;
  const row = at | 0;
  const below = tables.stagnation[row]!;
  return below + (at - row) * (tables.stagnation[row + 1]! - below);
}
