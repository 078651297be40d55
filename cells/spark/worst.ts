import { Impossible } from '../../src/graph/state.ts';
import { revolutionsPerMinute, si } from '../../src/units/unit.ts';
import { type BySpeed, soundRows, type SpeedRow } from '../output/rows.ts';

/** Below this an engine is seldom held wide open, and the model reads high. */
const lowest = si(2000, revolutionsPerMinute) - 1e-6;

/** At the best spark low speeds ask for more octane than any engine is ever run at, so it is not said. */
export function mustHaveCurve(sparkEntry: string): void {
  if (sparkEntry === 'best')
    throw new Impossible([
      'Best spark has no octane: at low speed it asks for more than any engine is run with. Give a total advance or a table, or hold it to the fuel.',
    ]);
}

/** The speed that asks for most: from 2000 rpm up, or of all of them where the curve ends lower. */
export function worstRow(found: BySpeed): SpeedRow {
  const sound = soundRows(found);
  const settled = sound.filter((row) => row.settled);
  const rows = settled.length > 0 ? settled : sound;
  const high = rows.filter((row) => row.speed >= lowest);
  return (high.length > 0 ? high : rows).reduce((most, row) =>
    row.octaneRequirement > most.octaneRequirement ? row : most,
  );
}
