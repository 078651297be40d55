import { root } from '../../numerics/root.ts';

/** A valve lift, m, at a crank angle after the top dead center of the gas exchange, rad. */
type LiftAtCrank = (angle: number) => number;

/** Areas under the two lift curves while both valves are open, m rad of crankshaft. */
export interface OverlapAreas {
  /** Under the intake's lift, from its opening until the lifts are equal. */
  readonly intake: number;
  /** Under the exhaust's lift, from there until it closes. */
  readonly exhaust: number;
  /** Crank angle of equal lift, rad after top dead center. */
  readonly equalAt: number;
}

/**
 * The two areas of valve overlap, each valve counted while it is the lesser one.
 *
 * @param intakeLift rising over the overlap
 * @param exhaustLift falling over the overlap
 * @param opens where the intake opens, rad after top dead center (so mostly negative)
 * @param closes where the exhaust closes, rad after top dead center
 * @returns null when the valves are never open together
 * Source: J. W. Fox, W. K. Cheng, J. B. Heywood, SAE 931025, 1993 (from memory).
 */
export function overlapAreas(
  intakeLift: LiftAtCrank,
  exhaustLift: LiftAtCrank,
  opens: number,
  closes: number,
): OverlapAreas | null {
  const equalAt = root((angle) => intakeLift(angle) - exhaustLift(angle), opens, closes);
  if (!(closes > opens) || equalAt === null) return null;
  return {
    intake: integral(intakeLift, opens, equalAt),
    exhaust: integral(exhaustLift, equalAt, closes),
    equalAt,
  };
}

/** Simpson's rule; the lifts are smooth to the second derivative. */
function integral(f: LiftAtCrank, from: number, to: number, panels = 64): number {
  const h = (to - from) / panels;
  let sum = f(from) + f(to);
  for (let i = 1; i < panels; i++) sum += f(from + i * h) * (i % 2 === 1 ? 4 : 2);
  return (sum * h) / 3;
}

/**
 * Overlap factor of a cylinder, rad/m.
 *
 * @param intakeDiameter inner diameter of the intake's seat, m
 * @param exhaustDiameter inner diameter of the exhaust's seat, m
 * @param areas m rad of crankshaft
 * @param sweptVolume m3
 * Source: J. W. Fox, W. K. Cheng, J. B. Heywood, SAE 931025, 1993 (from memory).
 */
export function overlapFactor(
  intakeDiameter: number,
  exhaustDiameter: number,
  areas: Pick<OverlapAreas, 'intake' | 'exhaust'>,
  sweptVolume: number,
): number {
  return (intakeDiameter * areas.intake + exhaustDiameter * areas.exhaust) / sweptVolume;
}

/** What the burned gas left in a cylinder depends on. */
export interface ResidualState {
  /** rad/m */
  readonly overlapFactor: number;
  /** Crankshaft speed, rad/s. */
  readonly speed: number;
  /** Manifold pressures, Pa absolute. */
  readonly intakePressure: number;
  readonly exhaustPressure: number;
  readonly equivalenceRatio: number;
  readonly compressionRatio: number;
}

/**
 * Mass fraction of burned gas left in the cylinder: what flows back while both valves are open, and what the clearance
 * volume keeps. Fitted to one engine, at part load more than at full; an order of magnitude for any other.
 *
 * Source: J. W. Fox, W. K. Cheng, J. B. Heywood, SAE 931025, 1993, in degrees, rev/s and bar (from memory).
 */
export function residualFraction(state: ResidualState): number {
  const perDegree = (state.overlapFactor * 180) / Math.PI; // deg/m
  const revolutions = state.speed / (2 * Math.PI); // rev/s
  const ratio = state.intakePressure / state.exhaustPressure;
  const difference = Math.abs(state.exhaustPressure - state.intakePressure) / 1e5; // bar
  const backflow = 1.266 * (perDegree / revolutions) * ratio ** -0.87 * Math.sqrt(difference);
  return backflow + (0.632 * state.equivalenceRatio * ratio ** -0.74) / state.compressionRatio;
}
