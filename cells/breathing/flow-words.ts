import type { Rows } from '../../src/graph/kind.ts';
import { benchArea } from '../../src/physics/flow/bench.ts';
import { curtainArea } from '../../src/physics/flow/valve-area.ts';
import { phrase, type Phrase, value } from '../../src/units/phrase.ts';
import { gap } from '../../src/units/quantity.ts';

interface Bench {
  readonly rows: Rows;
  readonly depression: number;
  readonly diameter: number;
  /** Full, m. */
  readonly lift: number;
}

/** What is to be said of a flow table, or of none. */
export function flowWords({ rows, depression, diameter, lift }: Bench): Phrase | null {
  if (rows.length === 0) return ['No bench figures: the flow is guessed from the valve’s diameter.'];
  const row = rows.findIndex(([at, flow]) => at! > 0 && benchArea(flow!, depression) > curtainArea(diameter, at!));
  if (row >= 0)
    return phrase`Row ${String(row + 1)} flows more than the curtain around the valve can: look at its lift and flow, the valve’s diameter and the depression.`;
  const last = rows.at(-1)![0]!;
  return lift > last * (1 + 1e-9)
    ? phrase`The bench stopped at ${value(last, gap)} and the valve lifts ${value(lift, gap)}: from there the flow is held.`
    : null;
}
