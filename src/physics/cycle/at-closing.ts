import type { CycleRecord } from './record.ts';

const tenth = 0.1;

/**
 * Where the intake valve shuts, as far as its flow goes: the entry of a record at which more than a tenth of its largest
 * opening is left for the last time, strokes counted from firing top. What passes later is next to nothing (common
 * practice, no source).
 *
 * @returns null where the valve never opens
 */
export function atClosing({ angle, intakeArea }: Pick<CycleRecord, 'angle' | 'intakeArea'>): number | null {
  const least = tenth * Math.max(...intakeArea);
  let found: number | null = null;
  // The first entry is the last again; what lies before firing top comes last, a cycle later.
  for (const isLater of [false, true])
    for (let i = 1; i < angle.length; i++) if (angle[i]! < -1e-6 === isLater && intakeArea[i]! > least) found = i;
  return found;
}
