import { type CycleRecord, openSpan, taken } from './cycle-record.ts';
import type { PressureField } from './pressure-map.ts';
import { meanAtValve, pressureAt, type Way, wayOf } from './wave-way.ts';

/** What a cycle's waves do, as far as its record shows it; pressures in the fields' unit. */
export interface FoundWaves {
  /** From where to where each valve is open. */
  readonly intake: Span | null;
  readonly exhaust: Span | null;
  /** Through the runner: the pull of the piston as it draws, and the push that comes back before it shuts. */
  readonly pull: Way | null;
  readonly push: Way | null;
  /** Through the primary: the push of the opened exhaust, and what comes back while both valves are open, where it comes to something. */
  readonly blowdown: Way | null;
  readonly back: Way | null;
  /** At the intake valve when a tenth of its opening is left: what is left after that passes next to nothing. */
  readonly closing: { readonly angle: number; readonly pressure: number } | null;
  /** Pressure at the exhaust valve while both are open, weighted by the smaller opening. */
  readonly overlap: number | null;
}
type Span = readonly [number, number];

const tenth = 0.1;
const blowdownEnds = (4 / 3) * Math.PI; // 60 degrees past bottom: what flows later the piston pushes
const notable = 0.12; // of the strongest in the pipe: less is not worth a word

/**
 * Finds in a record what its figure speaks of.
 *
 * @param order entries of the record by stroke, to which the fields' rows belong
 * @param least pressure, in the fields' unit, under which nothing is said
 */
export function foundWaves(
  record: CycleRecord,
  order: readonly number[],
  [runner, primary]: readonly [PressureField, PressureField],
  speed: number,
  least: number,
): FoundWaves {
  const { angles } = runner;
  const [intakeArea, exhaustArea] = [taken(record.intakeArea, order), taken(record.exhaustArea, order)];
  const [intake, exhaust] = [openSpan(intakeArea, angles), openSpan(exhaustArea, angles)];
  const shut = openSpan(intakeArea, angles, tenth * Math.max(...intakeArea))?.[1];
  const both = (i: number): number => Math.min(intakeArea[i]!, exhaustArea[i]!);
  const overlap = meanAtValve(primary, both);
  const shared = openSpan(
    angles.map((_, i) => both(i)),
    angles,
  );
  const enough = ({ values }: PressureField): number => Math.max(least, notable * Math.max(...values.map(Math.abs)));
  const way = (field: PressureField, sound: number, span: Span, sign: 1 | -1, heading: 'away' | 'back'): Way | null =>
    wayOf(field, span, sign, heading, speed / sound, enough(field));
  // In the overlap a wave counts that is little beside a blowdown.
  const sign = overlap !== null && overlap < 0 ? -1 : 1;
  const isHeard = shared !== null && overlap !== null && Math.abs(overlap) >= least;
  const pull = intake && way(runner, record.runner.sound, intake, -1, 'away');
  const blowdown = exhaust && way(primary, record.primary.sound, [exhaust[0], blowdownEnds], 1, 'away');
  return {
    intake,
    exhaust,
    pull,
    push: pull && shut !== undefined ? way(runner, record.runner.sound, [pull.from[0], shut], 1, 'back') : null,
    blowdown,
    back: isHeard ? wayOf(primary, shared, sign, 'back', speed / record.primary.sound, least) : null,
    closing: shut === undefined ? null : { angle: shut, pressure: pressureAt(runner, shut, 0) },
    overlap,
  };
}
