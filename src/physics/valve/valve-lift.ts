import type { Flanks } from './lobe-table.ts';
import { type Profile, profileFlanks } from './profile.ts';

/**
 * Lift of the valve off its seat, m.
 *
 * @param tappetLift m
 * @param rocker ratio of the rocker arm; 1 where the cam sits on the valve
 * @param lash hot clearance at the valve, m; 0 with a hydraulic tappet
 * Left out: flexing of the train and the way the ratio of a rocker arm changes as it swings.
 */
export function valveLift(tappetLift: number, rocker: number, lash: number): number {
  return Math.max(0, rocker * tappetLift - lash);
}

/** Tappet lift, m, at which a solid tappet's valve leaves and meets its seat: the hot lash (m) over the rocker ratio. */
export function solidSeatLift(lash: number, rocker: number): number {
  return lash / rocker;
}

/** Where a solid tappet's valve leaves and meets its seat, rad of crankshaft from the peak of its lobe. */
export function solidSeatFlanks(profile: Profile, lash: number, rocker: number): Flanks {
  return profileFlanks(profile, solidSeatLift(lash, rocker));
}

/** When a valve opens and closes, rad of crankshaft, each counted away from the dead center it is named after. */
export interface SeatEvents {
  /** Intake: before top dead center. Exhaust: before bottom dead center. */
  readonly opens: number;
  /** Intake: after bottom dead center. Exhaust: after top dead center. */
  readonly closes: number;
}

/** Events of an intake lobe whose peak stands at a centerline, rad after top dead center. */
export function intakeEvents(flanks: Flanks, centerline: number): SeatEvents {
  return { opens: -flanks.opening - centerline, closes: flanks.closing + centerline - Math.PI };
}

/** Events of an exhaust lobe whose peak stands at a centerline, rad before top dead center. */
export function exhaustEvents(flanks: Flanks, centerline: number): SeatEvents {
  return { opens: -flanks.opening + centerline - Math.PI, closes: flanks.closing - centerline };
}
