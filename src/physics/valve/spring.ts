import { maximumAt } from '../../numerics/maximum.ts';

/** A valve spring as installed. */
export interface ValveSpring {
  /** N, with the valve closed. */
  readonly seatForce: number;
  /** N/m; of nested springs, the sum. */
  readonly rate: number;
}

/** Force of the spring, N, at a valve lift, m. Left out: dampers, and springs whose rate changes as coils close. */
export function springForce({ seatForce, rate }: ValveSpring, lift: number): number {
  return seatForce + rate * lift;
}

/** How far the spring could still be pressed at full lift before its coils touch, m; negative where they would. */
export function coilBindReserve(installedHeight: number, coilBindHeight: number, lift: number): number {
  return installedHeight - coilBindHeight - lift;
}

/** Gap left at full lift between retainer and guide seal, m, from the gap with the valve closed; negative: they touch. */
export function retainerReserve(retainerToSeal: number, lift: number): number {
  return retainerToSeal - lift;
}

/** A valve that its spring has to keep on a lobe. Angles in rad of crankshaft from the lobe's peak. */
export interface SprungValve {
  readonly spring: ValveSpring;
  /** Mass moving with the valve, kg: valve, retainer, locks, a third of the spring, the rocker's share. */
  readonly mass: number;
  readonly rocker: number;
  /** m */
  readonly lash: number;
  /** Tappet lift, m, at an angle from the peak. */
  readonly lift: (angleFromPeak: number) => number;
  /** Tappet acceleration, m/rad2 of crankshaft, at an angle from the peak. */
  readonly acceleration: (angleFromPeak: number) => number;
  /** How far to either side of the peak the nose is looked over. */
  readonly halfWidth: number;
}

/**
 * Crankshaft speed, rad/s, at which the inertia of the valve-side mass first equals the spring's force somewhere on the
 * nose. An estimate: the train is rigid, the spring has no surge, gas pushes on nothing, and tappet and pushrod weigh
 * nothing; real trains lose contact earlier.
 *
 * @returns Infinity when nothing on the nose slows the valve, 0 when the spring does not push
 * @throws RangeError when the mass is not above zero
 * Source: Newton's second law.
 */
export function separationSpeed(valve: SprungValve): number {
  if (!(valve.mass > 0)) throw new RangeError('The mass of the valve must be above zero.');
  const { spring, mass, rocker, lash, halfWidth } = valve;
  // Inertia at 1 rad/s over force: where this is greatest, contact is lost first.
  const need = (angle: number): number => {
    const lift = rocker * valve.lift(angle) - lash;
    if (lift <= 0) return 0;
    const slowing = -rocker * valve.acceleration(angle);
    if (slowing <= 0) return 0;
    return (mass * slowing) / Math.max(0, springForce(spring, lift));
  };
  return 1 / Math.sqrt(need(maximumAt(need, -halfWidth, halfWidth)));
}
