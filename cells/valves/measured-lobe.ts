import type { Rows } from '../../src/graph/kind.ts';
import { type LobeTable, lobeFromTable } from '../../src/physics/valve/lobe-table.ts';

/** Why a table is no lobe, and the field to say it at. A value, not a fault: the card's seat timing goes on without. */
export interface NoLobe {
  readonly because: string;
  readonly about: string;
}

const highest = 0.0254; // m: as much as a card may say

/** The lobe of a table of angle (rad of what `of` names) and lift (m), or why there is none. */
export function measuredLobe(rows: Rows, of: string, side: 'intake' | 'exhaust'): LobeTable | NoLobe {
  const no = (because: string): NoLobe => ({ because, about: `${side}LobeTable` });
  if (rows.length === 0) return no(`Paste the lift table of the ${side} lobe.`);
  const tall = rows.findIndex((row) => row[1]! > highest);
  if (tall >= 0) return no(`Row ${tall + 1} of the lobe table lifts the tappet by more than an inch.`);
  const turns = of === 'cam' ? 2 : 1; // the crank turns twice as far
  try {
    const lobe = lobeFromTable(
      rows.map((row) => turns * row[0]!),
      rows.map((row) => row[1]!),
    );
    return lobe.bend.every(Number.isFinite) && lobe.lift > 0 ? lobe : no('No smooth lobe goes through this table.');
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return no(error.message);
  }
}
