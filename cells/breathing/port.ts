import type { Rows } from '../../src/graph/kind.ts';
import { Impossible } from '../../src/graph/state.ts';
import { type Port, portFromBench, portFromValve } from '../../src/physics/flow/port.ts';
import { phrase, value } from '../../src/units/phrase.ts';
import * as q from '../../src/units/quantity.ts';
import { cubicFeetPerMinute, inch, si } from '../../src/units/unit.ts';

type Side = 'intake' | 'exhaust';

// More than any engine's: a slip of units.
const highest = si(3, inch);
const largest = si(3000, cubicFeetPerMinute);

/** The port of a bench's table, or a guess from the valve's diameter (m) where the table is empty. */
export function portOf(side: Side, rows: Rows, depression: number, diameter: number): Port {
  if (rows.length === 0) return portFromValve(diameter);
  const field = `${side}Flow`;
  const row = rows.findIndex(([lift, flow]) => lift! > highest || flow! > largest);
  if (row >= 0)
    throw new Impossible(
      phrase`Row ${String(row + 1)} of the ${side} flow is out of reach: look for a lift over ${value(highest, q.gap)} or a flow over ${value(largest, q.airFlow)}.`,
      field,
    );
  try {
    return portFromBench(rows, depression);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new Impossible([error.message], field);
  }
}

/** A full lift (m), or a refusal where the valve stays shut. */
export function opened(side: Side, lift: number): number {
  if (!(lift > 0)) throw new Impossible([`The ${side} valve never leaves its seat.`], `${side}Lash`);
  return lift;
}
